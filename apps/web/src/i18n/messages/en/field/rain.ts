/** Controllers that can be paused after rain. */
export const rain = {
  'rain.title':
    '{count, plural, =0 {Nobody has to go: {all, plural, =0 {no controller needs a pause} one {the one controller where it rained pauses itself} other {the # controllers where it rained pause themselves}}} one {One controller can be paused after the rain} other {# controllers can be paused after the rain}}',
  'rain.tab': 'Rain pauses',
  'rain.lede':
    'Each can stay off until the first of its zones needs water again. New, sick and large plants need a person’s eye before water is cut.',
  'rain.print': 'Print',
  'rain.none': 'There is nothing to pause',
  'rain.noneHow':
    'No property with a weather station on record had rain in the last four days that its plants live on for a day or more. The list fills when weather comes in, or when a day is typed in Setup.',
  'rain.toGo': '{count, plural, one {One controller to pause by hand} other {# controllers to pause by hand}}',
  'rain.themselves': '{count, plural, one {One controller pauses by itself} other {# controllers pause by themselves}}',
  'rain.themselvesNote':
    'Nobody has to go. A rain sensor lets water run again once it is dry, commonly after a day or two: what is kept is the rest, should somebody pause it until the day shown.',
  'rain.head.controller': 'Controller',
  'rain.head.rain': 'Rain of four days',
  'rain.head.until': 'Waters again on',
  'rain.head.because': 'Why then',
  'rain.head.kept': 'Kept',
  'rain.lastOn': 'last on {day}',
  'rain.days': '{days, plural, one {today without water} other {# days without water, with today}}',
  'rain.because':
    '{because, select, rule {A watering rule forbids it until then} longest {As long as anybody should pause: look again then} practice {Soil or plants of a zone are not on record: 48 hours at most, as is common practice} other {{zone} needs water first}}',
  'rain.itself':
    '{why, select, weather {Computes its own run times} off {Is off} paused {{until, select, none {Is paused, no end is on record} other {Is paused until {until}}}} other {Has a rain sensor}}',
  'rain.ordered': 'order {state}',
  'rain.sum': 'Kept in all{unknown, plural, =0 {} one {, without one that is not known} other {, without # that are not known}}',
  'rain.choose': 'Pause {controller} at {property}',
  'rain.chooseAll': 'Choose all: {table}',
  'rain.chosen':
    '{count, plural, =0 {Choose the controllers to be paused, then the crew that goes} one {One controller is chosen} other {# controllers are chosen}}. Each order says on which day its controller waters again.',
  'rain.method':
    'Rain as measured at each property’s station, up to today. The root zones are reckoned as watered by need until it rained; where plants were dry before, look first. After today the station’s usual evapotranspiration counts, and no rain: there is no forecast. Local rules stand above it.{without, plural, =0 {} one { Of one property nothing can be said: it has no station, or none of its last days is on record.} other { Of # properties nothing can be said: they have no station, or none of its last days is on record.}}',
  'rain.link': 'See which controllers can be paused',
  'rain.link.fell': '{rain} of rain fell at {station}, last on {day}.',
  'work.rainPause': 'Rain pause, water again on {day}: {what}',
  'work.overtaken': 'Overtaken: this controller has newer planned settings, of {at}, with an order of their own. Enter the newer ones.',
  'work.overtaken.done':
    'Overtaken: newer planned settings, of {at}, have been entered on this controller. Do not go back to those of this order.',
};
