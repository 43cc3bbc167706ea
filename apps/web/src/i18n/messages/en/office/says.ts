/** The sentences that findings, reasons and notes say. The code of the library stands after the last dot. */
export const says = {
  'says.controller': 'Controller {name}: {sentence}',
  'says.zone.named': 'zone {station} ({name})',
  'says.zone.one': 'one zone',
  'says.finding.overwatered':
    '{extra}{per, select, month { a month} other {}} more went through the meter than the plants needed{before, select, none {} other {, up from {before}}}. {because, select, none {What was programmed is not known.} other {{because}}}',
  'says.finding.over-programmed':
    '{programs, plural, =0 {The settings give} one {Program {programNames} gives} other {Programs {programNames} give}} {zones, plural, =0 {the plants} one {{zoneName}} other {# zones}} more than the plants need.{percent, select, none {} other { About {percent} of the present minutes would do.}}',
  'says.finding.under-programmed':
    '{programs, plural, =0 {The settings give} one {Program {programNames} gives} other {Programs {programNames} give}} {zones, plural, =0 {the plants} one {{zoneName}} other {# zones}} less than the plants need.{percent, select, none { Nothing runs there now.} other { About {percent} of the present minutes would be right.}}',
  'says.finding.unexplained use':
    '{extra}{per, select, month { a month} other {}} that no program explains{before, select, none {} other {, up from {before}}}{ratio, select, none {} other {: metered is {ratio} of programmed}}{usual, select, none {} other {, and was {usual} in earlier months}}.',
  'says.finding.not delivering':
    'Only {ratio} of what was programmed went through the meter{usual, select, none {} other {, {usual} in earlier months}}: a valve may not open, or the controller is off.',
  'says.finding.not delivering zone':
    '{zones, plural, =0 {A zone passes} one {{zoneName} passes} other {# zones pass}} hardly any water when set to run: look at the valve and its wiring first.',
  'says.finding.not delivering pressure':
    'All zones together pass only {ratio} of their usual flow: look at the pressure, a main valve or a filter first.',
  'says.finding.not delivering runs':
    'Nothing went through the meter on {days, plural, =0 {days} one {one day} other {# days}} on which programs were set to run and no rain explains it: look at the controller and the master valve first.',
  'says.finding.flow to be tested':
    'Metered is always about {usual} of programmed: the recorded flows of the zones are probably wrong. Test them before believing either.',
  'says.finding.over allowance':
    '{extra} more metered than is allowed{running, select, no {} other {, in {daysCovered} of {daysInMonth} days; {band, select, within {the month will probably end within it} upTo {by the month’s end about {projected}, nine times in ten at most {upper}} both {by the month’s end about {projected}, nine times in ten between {lower} and {upper}} other {{projected} by the month’s end at this pace}}}}.',
  'says.finding.lower than last':
    'Register {next} is lower than the one before, {previous}, and no rollover or swap explains it.{likely, select, none {} other { {likely} was probably meant.}}',
  'says.finding.implausibly high': 'Register {next} after {previous} is more water than can have run.',
  'says.finding.stuck': 'The register still stands at {next}, though water must have run.',
  'says.finding.unit mixed up':
    'Register {next} after {previous} looks like another unit{factor, select, none {} other { (a factor of {factor})}}.{likely, select, none {} other { {likely} was probably meant.}}',
  'says.finding.digits swapped': 'Register {next} after {previous} has probably two digits swapped: {likely} would fit.',
  'says.finding.digit mistyped': 'Register {next} after {previous} has probably one wrong digit: {likely} would fit.',
  'says.finding.sources-contradict':
    'From {from} to {until} {source} say {volume}, but {betterSource} say {betterVolume}. The account takes {betterSource}.',
  'says.finding.stale': 'Not heard of for long: {what}.',
  'says.finding.steady flow':
    'About {flow} flows through the meter without a stop, also when nothing is set to run: {soFar} so far. Look for a leak, a broken pipe or a valve that does not close.',
  'says.finding.off-schedule run':
    'Water ran {times, plural, one {once} other {# times}} outside every program{clock, select, none {} other {, about {clock}}}: {each} each time. Somebody may have added a program, or a valve opens by itself.',
  'says.finding.watered in rain':
    'The settings ran on {days, plural, one {one day} other {# days}} on which {rain} of rain already covered what the plants needed.',
  'says.finding.zone flow changed':
    '{zones, plural, =0 {A zone} one {{zoneName}} other {# zones}} now {zones, plural, one {passes} =0 {passes} other {pass}} {flow}, {change, select, more {more} other {less}} than the usual {usual}: {change, select, more {look for a broken head or pipe} other {look for a clog, a closed head or a valve that opens halfway}}.',
  'says.finding.breaks a rule':
    '{programs, plural, =0 {The settings break} one {Program {programNames} breaks} other {Programs {programNames} break}} {rule, select, none {a watering rule} other {the rule {rule}}}.',
  'says.finding.mixed water needs':
    'Plants with different needs share {zones, plural, =0 {a zone} one {{zoneName}} other {# zones}}: watering for the thirstiest costs {aYear} a year.',
  'says.stale.meters': '{count, plural, one {a meter without reading} other {# meters without reading}}',
  'says.stale.controllers': '{count, plural, one {a controller without settings} other {# controllers without settings}}',
  'says.stale.visit': 'no visit for {days, plural, one {# day} other {# days}}',
  'says.finding.seen on site':
    'Seen on site{where, select, none {} other { in {where}}}: {what}{count, plural, one {} other {, # of them}}.{word, select, none {} other { {word}}}',
  'says.finding.other': 'This says “{kind}”; its evidence is below.',
  'says.reason.no-complete-day': 'No day of this month is complete yet.',
  'says.reason.no-zones': 'No zones are known yet.',
  'says.reason.no-meter': 'No meter is known yet.',
  'says.reason.no-allowance': 'No allowance is set: the ordinance’s or the contract’s.',
  'says.reason.allowance-is-for-the-property': 'The allowance is for the whole property, not for one meter.',
  'says.reason.weather-missing':
    'Weather is missing: {days, plural, =0 {{share} of the month} one {one day} other {# days}}{of, select, none {} other { of {of}}}.',
  'says.reason.readings-missing':
    'No meter reading for {share, select, none {a part} other {{share}}} of the month{meters, select, none {} other { ({meters})}}.',
  'says.reason.indoor-not-known': 'How much of the water is used indoors is not known.',
  'says.reason.settings-not-known': 'Settings not known: read the controller{controller, select, none {} other { ({controller})}}.',
  'says.reason.settings-from-weather':
    'The controller sets its own times by weather: what it gave can only be estimated, and only where the need is known.',
  'says.estimate': 'An estimate: the controller sets its own times by weather.',
  'says.reason.flow-not-known':
    '{zones, plural, =0 {The flow of a zone is} one {The flow of {zoneName} is} other {The flows of # zones are}} not known.',
  'says.reason.no-controller':
    '{zones, plural, =0 {A zone has} one {{zoneName} has} other {# zones have}} no controller or station on record.',
  'says.reason.hand-volume-not-known':
    'How much is given by hand is not known for {zones, plural, =0 {a zone} one {{zoneName}} other {# zones}}.',
  'says.reason.zones-not-assigned': '{zones, plural, =0 {A zone is} one {{zoneName} is} other {# zones are}} not assigned to a meter.',
  'says.reason.meter-without-zones': '{meters, select, none {A meter has} other {{meters} has}} no zones.',
  'says.reason.volume-absent': 'Waits for what is not known: {volumes}.',
  'says.reason.no-account': 'No account has been computed for this month.',
  'says.reason.within-what-can-be-measured': 'Within what can be measured of its need.',
  'says.reason.other': 'Not known ({code}).',
  'says.note.weather-starts-later':
    'Weather starts on {from}, {days, plural, one {# day} other {# days}} before the month instead of {wanted}: the soil’s store at the start is a guess.',
  'says.note.weather-missing-before-month':
    '{days, plural, one {One day of weather before the month is} other {# days of weather before the month are}} missing.',
  'says.note.weather-filled':
    'Weather was filled: {neighbour, plural, =0 {no day} one {one day} other {# days}} from the neighbouring station, {normals, plural, =0 {no day} one {one day} other {# days}} from what is usual in the month.',
  'says.note.weather-rain-from-neighbour':
    'Rain of {days, plural, one {one day is} other {# days is}} the neighbouring station’s: what was needed is less sure by what the two differ.',
  'says.note.weather-rain-not-known':
    'Rain is not known of {days, plural, one {one day} other {# days}}: what such a day needed is estimated from its reference ET and from the other days, and is less sure by the rain it may have had.',
  'says.note.special-landscape-area-capped':
    'The special landscape area, {special}, is larger than all that is irrigated, {irrigated}: the smaller was taken.',
  'says.note.volume-estimated': '{share} of {volume} is estimated: the days that are missing were filled in.',
  'says.note.programmed-from-weather':
    '{share} of programmed is an estimate: {controller, select, none {a controller} other {controller {controller}}} sets its own times by weather, and was taken to give what the plants needed, give or take 30 %.',
  'says.note.sources-contradict':
    'From {from} to {until} {source} say {volume}, but {betterSource} say {betterVolume}. The account takes {betterSource}.',
  'says.note.plants-establishing':
    '{zoneName}: new plants, {share} of the way to established. Roots, need and cover of young plants are taken.',
  'says.note.input-assumed':
    '{zones, plural, =0 {{input} is} one {{zoneName}: {input} is} other {# zones: {input} is}} assumed, not measured.',
  'says.note.other': 'A note that this version has no words for ({code}).',
  'says.someZone': 'A zone',
};
