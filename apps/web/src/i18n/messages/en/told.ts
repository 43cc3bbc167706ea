/** A finding as one sentence: what was seen, since when, how sure, water and money, and what to look at first. */
export const told = {
  'told.sentence': '{what}: {when}, {sure}, {water}; first, {first}',
  'told.onController': 'On controller {name}, {what}',
  'told.when.since': 'since {from}',
  'told.when.between': 'from {from} to {until}',
  'told.when.on': 'on {from}',
  'told.when.unknown': 'since when is not known',
  'told.sure.share': '{share} sure',
  'told.sure.records': 'certain, as it is read from the records',
  'told.sure.eyes': 'seen by the crew',
  'told.sure.unknown': 'how sure is not known',
  'told.water.perMonth':
    'about {litres}{money, select, none {} other { and {money}}} a month{money, select, none {, at a price that is not on record} other {}}',
  'told.water.ofMonth':
    'about {litres}{money, select, none {} other { and {money}}} in {month}{money, select, none {, at a price that is not on record} other {}}',
  'told.water.partOfMonth':
    'about {litres}{money, select, none {} other { and {money}}} from {days}{money, select, none {, at a price that is not on record} other {}}',
  'told.water.once':
    '{times, plural, one {about {litres}} other {up to about {litres}}}{money, select, none {} other { and {money}}}{times, plural, one {} other { each time}}{money, select, none {, at a price that is not on record} other {}}',
  'told.water.tooLittlePerMonth': 'about {litres} a month too little',
  'told.water.tooLittleOfMonth': 'about {litres} too little in {month}',
  'told.water.tooLittlePartOfMonth': 'about {litres} too little from {days}',
  'told.water.differs': 'the two differ by about {litres} a month, whose money nobody can tell before a test',
  'told.water.sourcesDiffer': 'the two differ by about {litres}, whose money nobody can tell before one of them is put right',
  'told.water.claimed': 'it claims about {litres}, which nobody can price before it is put right',
  'told.water.reading': 'water and money cannot be told before it is put right',
  'told.water.unknown': 'how much water and money a month is not known',
  'told.what.overwatered': 'More went through the meter than the plants needed, and what was programmed is not known',
  'told.what.over-programmed':
    '{programs, plural, =0 {The settings give} one {Program {programNames} gives} other {Programs {programNames} give}} {zones, plural, =0 {the plants} one {{zoneName}} other {# zones}} more than the plants need{unchanged, select, none {} other {, unchanged for {unchanged} days while the need fell by {fell}}}',
  'told.what.under-programmed':
    '{programs, plural, =0 {The settings give} one {Program {programNames} gives} other {Programs {programNames} give}} {zones, plural, =0 {the plants} one {{zoneName}} other {# zones}} less than the plants need',
  'told.what.unexplained use':
    'Water went through the meter that no program explains{ratio, select, none {} other {, {ratio} of what was programmed}}{usual, select, none {} other { against {usual} in earlier months}}',
  'told.what.not delivering':
    'Only {ratio} of what was programmed went through the meter{usual, select, none {} other {, {usual} in earlier months}}',
  'told.what.not delivering zone':
    '{zones, plural, =0 {A zone passes} one {{zoneName} passes} other {# zones pass}} hardly any water when set to run',
  'told.what.not delivering pressure': 'All zones together pass only {ratio} of their usual flow',
  'told.what.not delivering runs':
    'Nothing went through the meter on {days, plural, =0 {days} one {one day} other {# days}} on which programs were set to run and no rain explains it',
  'told.what.flow to be tested':
    'Metered is always about {usual} of programmed, so that the recorded flows of the zones are probably wrong',
  'told.what.over allowance':
    'More went through the meter than is allowed{running, select, no {} other {, in {daysCovered} of {daysInMonth} days; {band, select, within {the month will probably end within it} upTo {by the month’s end about {projected}, nine times in ten at most {upper}} both {by the month’s end about {projected}, nine times in ten between {lower} and {upper}} other {{projected} by the month’s end at this pace}}}}',
  'told.what.lower than last': 'Register {next} is lower than the one before, {previous}, and no rollover or swap explains it',
  'told.what.implausibly high': 'Register {next} after {previous} is more water than can have run',
  'told.what.stuck': 'The register still stands at {next}, though water must have run',
  'told.what.unit mixed up':
    'Register {next} after {previous} looks like another unit{factor, select, none {} other { (a factor of {factor})}}',
  'told.what.digits swapped': 'Register {next} after {previous} has probably two digits swapped',
  'told.what.digit mistyped': 'Register {next} after {previous} has probably one wrong digit',
  'told.what.sources-contradict': 'Of the same days {source} say {volume}, but {betterSource}, which the account takes, say {betterVolume}',
  'told.what.stale': 'Nothing was heard for long, with {what}',
  'told.what.steady flow': 'About {flow} flows through the meter without a stop, also when nothing is set to run',
  'told.what.off-schedule run':
    'Water ran {times, plural, one {once} other {# times}} outside every program{clock, select, none {} other {, about {clock}}}, {each} each time',
  'told.what.watered in rain':
    'The settings ran on {days, plural, one {one day} other {# days}} on which {rain} of rain already covered what the plants needed',
  'told.what.zone flow changed':
    '{zones, plural, =0 {A zone passes} one {{zoneName} passes} other {# zones pass}} {flow}, {change, select, more {more} other {less}} than the usual {usual}',
  'told.what.breaks a rule':
    '{programs, plural, =0 {The settings break} one {Program {programNames} breaks} other {Programs {programNames} break}} {rule, select, none {a watering rule} other {the rule “{rule}”}}',
  'told.what.mixed water needs':
    'Plants with different needs share {zones, plural, =0 {a zone} one {{zoneName}} other {# zones}}, which is watered for the thirstiest',
  'told.what.seen on site':
    'Seen on site{where, select, none {} other { in {where}}}, {what}{count, plural, one {} other {, # of them}}{word, select, none {} other { (“{word}”)}}',
  'told.first.overwatered': 'read the controller',
  'told.first.over-programmed':
    'compare the controller with the settings on record{percent, select, none {} other {, of whose minutes about {percent} would do}}',
  'told.first.under-programmed':
    'look at the plants, then {percent, select, none {set a run, as nothing runs there now} other {lengthen the minutes to about {percent} of the present ones}}',
  'told.first.unexplained use': 'close the stop with nothing running, and watch whether the register still turns',
  'told.first.not delivering': 'see whether the controller is on, then open each valve by hand',
  'told.first.not delivering zone': 'look at its valve and wiring',
  'told.first.not delivering pressure': 'look at the pressure, a main valve or a filter',
  'told.first.not delivering runs': 'look at the controller and the master valve',
  'told.first.flow to be tested': 'run each zone for two minutes and read the register before and after',
  'told.first.over allowance': 'look at the largest gap of its account',
  'told.first.lower than last': 'read the meter again{likely, select, none {} other {, as {likely} was probably meant}}',
  'told.first.implausibly high': 'read the meter again, with a photo',
  'told.first.stuck': 'watch the register while a zone runs',
  'told.first.unit mixed up': 'compare its unit with the one on record{likely, select, none {} other {, as {likely} was probably meant}}',
  'told.first.digits swapped': 'see whether {likely} was meant',
  'told.first.digit mistyped': 'see whether {likely} was meant',
  'told.first.sources-contradict': 'compare the two for these days',
  'told.first.stale': 'read the meter and the controller on the next visit',
  'told.first.steady flow': 'look for a leak, a broken pipe or a valve that does not close',
  'told.first.off-schedule run': 'look for a second start time, a second program, or a valve that opens by itself',
  'told.first.watered in rain': 'test the rain sensor',
  'told.first.zone flow changed':
    '{change, select, more {look for a broken head or pipe} other {look for a clog, a closed head or a valve that opens halfway}}',
  'told.first.breaks a rule': 'read the rule, then move days and start times within it',
  'told.first.mixed water needs': 'look whether the thirsty plants can move or get a line of their own',
  'told.first.seen on site': 'look at the photos and the crew’s words',
  'told.first.other': 'look at the evidence below',
};
