/** The words of what a client sees. */
export const water = {
  'yourWater.title':
    '{count, plural, one {What your property took, and what its plants needed} other {What your # properties took, and what their plants needed}}',
  'yourWater.lede':
    'Needed is what the plants asked from irrigation with the weather that really came; metered is what went through the meter.',
  'yourWater.month': 'Month',
  'yourWater.through': 'The month is not over: all volumes are to {day}.',
  'yourWater.empty': 'No property of yours is on record yet',
  'yourWater.emptyHow': 'Ask the company that looks after your landscape. Your properties stand here as soon as they are entered.',
  'yourWater.noAccount': 'There is no account for this month yet. It comes with the first readings and weather.',
  'yourWater.notKnown': 'not known',
  'yourWater.months': '{name}, month by month',
  'yourWater.says.notMetered': '{name}: how much it took is not known{reason, select, none {} other { ({reason})}}',
  'yourWater.says.noNeed': '{name} took {metered}; what its plants needed is not known yet',
  'yourWater.says.near': '{name} took {metered}, about what its plants needed',
  'yourWater.says.above': '{name} took {metered}, {gap} more than its plants needed{money, select, none {} other {, about {money}}}',
  'yourWater.says.below': '{name} took {metered}, {gap} less than its plants needed',
  'yourWater.reports': '{count, plural, =0 {No water report yet} one {One water report} other {# water reports}}',
  'yourWater.noReports': 'A report comes for a month, a quarter or a year. It stands here when it is sent.',
  'yourWater.sent': 'sent {when}',
  'yourWater.foot': 'Budgets and schedules are advice. Local codes and your water supplier’s rules stand above them.',
};
