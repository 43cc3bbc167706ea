/** The words of a month's plan, and of the route sheet. */
export const monthPlan = {
  'monthPlan.title':
    '{stops, plural, =0 {No stops in this month} one {One stop in this month, {drive} of driving} other {# stops in this month, {drive} of driving}}; {unplaced, plural, =0 {everything has a day} one {one thing has no day} other {# things have no day}}',
  'monthPlan.tab': 'Plan the month',
  'monthPlan.make': 'Plan the month',
  'monthPlan.making': 'Planning…',
  'monthPlan.made':
    'Planned: {moved, plural, =0 {nothing moved} one {one stop got another day} other {# stops got another day}}, {unplaced, plural, =0 {everything has a day} one {one found no day} other {# found no day}}.',
  'monthPlan.undo': 'Undo the plan',
  'monthPlan.undone': 'The plan is undone: everything it moved is back where it stood.',
  'monthPlan.how':
    'Drag a stop to another crew or day. With the keyboard: Shift and an arrow carry it, L locks it, Enter asks for crew, day and place. What you carry is locked and stays when the month is planned again.',
  'monthPlan.board': 'Days down, crews across',
  'monthPlan.dayOf': '{crew}, {stops, plural, =0 {no stops} one {one stop} other {# stops}}',
  'monthPlan.off': 'off',
  'monthPlan.dayLine':
    'Leaves {leaves}, back {home}; driving {drive}, work {work} of {most}{waits, select, none {} other {, waiting {waits}}}.',
  'monthPlan.sheet': 'Route sheet',
  'monthPlan.visit': 'visit',
  'monthPlan.locked': 'locked',
  'monthPlan.visited': 'visited',
  'monthPlan.lockedNow': '{name} is locked to its day.',
  'monthPlan.freeNow': '{name} may move when the month is planned again.',
  'monthPlan.carried': '{name} is now with {crew}, {day}.',
  'monthPlan.moveTitle': 'Who goes to {name}, and when?',
  'monthPlan.position': 'Place in the order of the day',
  'monthPlan.lock': 'Lock it to this day',
  'monthPlan.lockHint': 'It stays there when the month is planned again.',
  'monthPlan.move': 'Move it',
  'monthPlan.unplaced': '{count, plural, =0 {Everything has a day} one {One thing has no day} other {# things have no day}}',
  'monthPlan.due': 'visit due {day}',
  'monthPlan.place': 'Give it a day',
  'monthPlan.placeOf': 'Give it a day: {name}',
  'monthPlan.misfit': 'Does not fit:',
  'monthPlan.misfit.late':
    '{isReached, select, true {{name} is reached {by} after its hours end} other {on this day {name} is not open for as long as its work takes}}.',
  'monthPlan.misfit.homeLate': 'the crew is back {by} after its day ends.',
  'monthPlan.misfit.tooBusy': '{by} more work and driving than the day has.',
  'monthPlan.misfit.tooMuchLoad': 'more stops than a crew makes in a day.',
  'monthPlan.misfit.notAllowed': '{name} needs a skill that this crew does not have, or its position is not known.',
  'monthPlan.misfit.pastDue': 'work at {name} was to be done before this day.',
  'monthPlan.why.notPlannedYet': 'Not planned yet.',
  'monthPlan.why.missed': 'Nobody came on {day}.',
  'monthPlan.why.noPosition': 'Where the property lies is not known. Put its latitude and longitude into Setup.',
  'monthPlan.why.noSkill': 'No crew can do this: {skills}. Add the skill to a crew that has it, or give the work to somebody else.',
  'monthPlan.why.noDay': 'No crew works on any of the days on which this may be done.',
  'monthPlan.why.neverOpen': 'The property is never open long enough while a crew works: the work takes {work}. Look at its hours.',
  'monthPlan.why.tooLong':
    'The work takes {work} with the drive there and back, and the longest day has {most}. Divide it into two orders.',
  'monthPlan.why.daysFull': 'Every day that may have it is full: it needs {needs} with the drive, and the emptiest has {room} left.',
  'monthPlan.why.hoursClash': 'There is time, but the hours of this property and those of the stops beside it do not go together.',
  'monthPlan.why.driveTooLong': 'It would add {added} of driving: more than it is worth this month. Give it a day by hand if it must be.',
  'monthPlan.straightLine':
    'Driving times are a straight-line estimate: the distance as the crow flies times {factor}, at {speed}, and {minutes} min for each drive.',
  'monthPlan.byServer': 'Driving times come from your own routing server.',
  'monthPlan.serverFault':
    'Your routing server was not used: {fault, select, reached {it could not be reached} time {it did not answer in time} refused {it refused to answer} other {its answer was no whole table of times}}. Whoever runs this server finds more in its log.',
  'monthPlan.pace': '{crew} takes {factor} times the estimates, from {visits, plural, one {one visit} other {# visits}}.',
  'monthPlan.noPace': '{crew}: hours are the estimates; too few visits tell how long it takes.',
  'monthPlan.caution': 'A plan is advice: who knows the road, the weather and the crew decides. In heat plan the heavy work early.',
  'sheet.title': 'Route sheet: {stops, plural, =0 {no stops} one {one stop} other {# stops}}',
  'sheet.tab': 'Route sheet {day}',
  'sheet.print': 'Print',
  'sheet.none': 'No crew has a stop on this day.',
  'sheet.care':
    'Controllers can hold mains voltage: inside the cabinet only a licensed electrician works. Call the utility locate service before digging. Lines are under pressure. Drink, and rest in the shade.',
  'sheet.times': 'Arrived, left',
  'sheet.register': 'Register of {name}',
  'monthPlan.replan': 'Plan the rest of today again',
  'monthPlan.replanOf': 'Plan the rest of today again: {crew}',
  'monthPlan.replanned':
    'Planned from now on: {moved, plural, =0 {nothing moved} one {one stop got another crew or day} other {# stops got another crew or day}}, {unplaced, plural, =0 {all of the rest of today has its day} one {one found no day} other {# found no day}}.',
  'season.open': 'Seasonal change',
  'season.title': 'Settings for {month}',
  'season.what': 'Set the controller as planned for {month}',
  'season.how':
    'Every controller is planned for the month. Where new settings put right more water than your least and a tenth of the need, or what is set now breaks a rule, an order to set them is made. Orders get a day when the month is planned. A controller that already has an adjustment to be done keeps that one.',
  'season.make': 'Look at all controllers',
  'season.goOn': 'Go on',
  'season.looked':
    '{looked} of {all, plural, one {# property} other {# properties}} looked at, {made, plural, =0 {no order made} one {one order made} other {# orders made}}.',
  'season.over':
    'All {all, plural, one {# property} other {# properties}} looked at: {made, plural, =0 {no controller is worth the way} one {one order made} other {# orders made}}.',
  'season.close': 'Close',
  'sheet.map': 'Where the {stops} stops lie, in their order',
  'sheet.mapHow':
    'North is up. Lines show the order, not the roads{hasStart, select, true {; the filled square is where the day starts} other {}}.{missing, plural, =0 {} one { One stop has no position yet.} other { # stops have no position yet.}}',
};
