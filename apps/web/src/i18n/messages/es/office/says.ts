import type { says as english } from '../../en/office/says.js';

export const says: Record<keyof typeof english, string> = {
  'says.controller': 'Controlador {name}: {sentence}',
  'says.zone.named': 'la zona {station} ({name})',
  'says.zone.one': 'una zona',
  'says.finding.overwatered':
    'Por el medidor pasaron {extra}{per, select, month { al mes} other {}} más de lo que las plantas necesitaban{before, select, none {} other {, antes {before}}}. {because, select, none {No se sabe lo programado.} other {{because}}}',
  'says.finding.over-programmed':
    '{programs, plural, =0 {Los ajustes dan} one {El programa {programNames} da} other {Los programas {programNames} dan}} a {zones, plural, =0 {las plantas} one {{zoneName}} other {# zonas}} más de lo que las plantas necesitan.{percent, select, none {} other { Bastaría cerca del {percent} de los minutos actuales.}}',
  'says.finding.under-programmed':
    '{programs, plural, =0 {Los ajustes dan} one {El programa {programNames} da} other {Los programas {programNames} dan}} a {zones, plural, =0 {las plantas} one {{zoneName}} other {# zonas}} menos de lo que las plantas necesitan.{percent, select, none { Ahora no corre nada allí.} other { Lo correcto sería cerca del {percent} de los minutos actuales.}}',
  'says.finding.unexplained use':
    '{extra}{per, select, month { al mes} other {}} que ningún programa explica{before, select, none {} other {, antes {before}}}{ratio, select, none {} other {: lo medido es el {ratio} de lo programado}}{usual, select, none {} other {, y en meses anteriores era el {usual}}}.',
  'says.finding.not delivering':
    'Solo el {ratio} de lo programado pasó por el medidor{usual, select, none {} other {, {usual} en meses anteriores}}: puede que una válvula no abra o que el controlador esté apagado.',
  'says.finding.not delivering zone':
    'Por {zones, plural, =0 {una zona} one {{zoneName}} other {# zonas}} casi no pasa agua cuando debe correr: revise primero la válvula y su cableado.',
  'says.finding.not delivering pressure':
    'Por todas las zonas juntas pasa solo el {ratio} del caudal habitual: revise primero la presión, una válvula principal o un filtro.',
  'says.finding.not delivering runs':
    'No pasó nada por el medidor en {days, plural, =0 {días} one {un día} other {# días}} en que debían correr programas y ninguna lluvia lo explica: revise primero el controlador y la válvula maestra.',
  'says.finding.flow to be tested':
    'Lo medido es siempre cerca del {usual} de lo programado: los caudales anotados de las zonas probablemente están mal. Mídalos antes de creer a cualquiera de los dos.',
  'says.finding.over allowance':
    '{extra} más medidos de lo permitido{running, select, no {} other {, en {daysCovered} de {daysInMonth} días; {band, select, within {el mes probablemente termina dentro de lo permitido} upTo {al final del mes unos {projected}, nueve de cada diez veces a lo más {upper}} both {al final del mes unos {projected}, nueve de cada diez veces entre {lower} y {upper}} other {{projected} al final del mes a este paso}}}}.',
  'says.finding.lower than last':
    'El registro {next} es menor que el anterior, {previous}, y ni una vuelta ni un cambio de medidor lo explican.{likely, select, none {} other { Probablemente era {likely}.}}',
  'says.finding.implausibly high': 'El registro {next} después de {previous} es más agua de la que pudo correr.',
  'says.finding.stuck': 'El registro sigue en {next}, aunque tuvo que correr agua.',
  'says.finding.unit mixed up':
    'El registro {next} después de {previous} parece estar en otra unidad{factor, select, none {} other { (un factor de {factor})}}.{likely, select, none {} other { Probablemente era {likely}.}}',
  'says.finding.digits swapped': 'El registro {next} después de {previous} probablemente tiene dos cifras cambiadas: {likely} concordaría.',
  'says.finding.digit mistyped': 'El registro {next} después de {previous} probablemente tiene una cifra equivocada: {likely} concordaría.',
  'says.finding.sources-contradict':
    'Del {from} al {until}, {source} dicen {volume}, pero {betterSource} dicen {betterVolume}. La cuenta toma {betterSource}.',
  'says.finding.stale': 'Sin noticias desde hace mucho: {what}.',
  'says.finding.steady flow':
    'Por el medidor pasan sin parar unos {flow}, también cuando nada debe correr: {soFar} hasta ahora. Busque una fuga, un tubo roto o una válvula que no cierra.',
  'says.finding.off-schedule run':
    'Corrió agua {times, plural, one {una vez} other {# veces}} fuera de todo programa{clock, select, none {} other {, hacia las {clock}}}: {each} cada vez. Puede que alguien agregara un programa o que una válvula abra sola.',
  'says.finding.watered in rain':
    'Los ajustes corrieron {days, plural, one {un día} other {# días}} en que {rain} de lluvia ya cubrían lo que las plantas necesitaban.',
  'says.finding.zone flow changed':
    'Por {zones, plural, =0 {una zona} one {{zoneName}} other {# zonas}} pasan ahora {flow}, {change, select, more {más} other {menos}} que lo habitual, {usual}: {change, select, more {busque un aspersor o un tubo roto} other {busque una obstrucción, un aspersor cerrado o una válvula que abre a medias}}.',
  'says.finding.breaks a rule':
    '{programs, plural, =0 {Los ajustes incumplen} one {El programa {programNames} incumple} other {Los programas {programNames} incumplen}} {rule, select, none {una regla de riego} other {la regla {rule}}}.',
  'says.finding.mixed water needs':
    'En {zones, plural, =0 {una zona} one {{zoneName}} other {# zonas}} hay plantas con necesidades distintas: regar para la más sedienta cuesta {aYear} al año.',
  'says.stale.meters': '{count, plural, one {un medidor sin lectura} other {# medidores sin lectura}}',
  'says.stale.controllers': '{count, plural, one {un controlador sin ajustes} other {# controladores sin ajustes}}',
  'says.stale.visit': 'ninguna visita en {days, plural, one {# día} other {# días}}',
  'says.finding.seen on site':
    'Visto en el sitio{where, select, none {} other { en {where}}}: {what}{count, plural, one {} other {, # en total}}.{word, select, none {} other { {word}}}',
  'says.finding.other': 'Esto dice «{kind}»; sus pruebas están abajo.',
  'says.reason.no-complete-day': 'Todavía no hay ningún día completo de este mes.',
  'says.reason.no-zones': 'Todavía no se conoce ninguna zona.',
  'says.reason.no-meter': 'Todavía no se conoce ningún medidor.',
  'says.reason.no-allowance': 'No hay permitido fijado: ni el de la ordenanza ni el del contrato.',
  'says.reason.allowance-is-for-the-property': 'Lo permitido vale para toda la propiedad, no para un medidor.',
  'says.reason.weather-missing':
    'Falta el clima: {days, plural, =0 {{share} del mes} one {un día} other {# días}}{of, select, none {} other { de {of}}}.',
  'says.reason.readings-missing':
    'Sin lectura del medidor para {share, select, none {una parte} other {{share}}} del mes{meters, select, none {} other { ({meters})}}.',
  'says.reason.indoor-not-known': 'No se sabe cuánta de esta agua se usa en interiores.',
  'says.reason.settings-not-known': 'No se conocen los ajustes: lea el controlador{controller, select, none {} other { ({controller})}}.',
  'says.reason.settings-from-weather':
    'El controlador fija sus tiempos según el clima: lo que dio solo se puede estimar, y solo donde se conoce la necesidad.',
  'says.estimate': 'Una estimación: el controlador fija sus tiempos según el clima.',
  'says.reason.flow-not-known':
    '{zones, plural, =0 {No se conoce el caudal de una zona} one {No se conoce el caudal de {zoneName}} other {No se conocen los caudales de # zonas}}.',
  'says.reason.no-controller':
    '{zones, plural, =0 {Una zona no tiene} one {{zoneName} no tiene} other {# zonas no tienen}} controlador o estación anotados.',
  'says.reason.hand-volume-not-known': 'No se sabe cuánto se da a mano en {zones, plural, =0 {una zona} one {{zoneName}} other {# zonas}}.',
  'says.reason.zones-not-assigned':
    '{zones, plural, =0 {Una zona no está asignada} one {{zoneName} no está asignada} other {# zonas no están asignadas}} a un medidor.',
  'says.reason.meter-without-zones': '{meters, select, none {Un medidor} other {{meters}}} no tiene zonas.',
  'says.reason.volume-absent': 'Espera lo que no se sabe: {volumes}.',
  'says.reason.no-account': 'No se ha calculado ninguna cuenta de este mes.',
  'says.reason.within-what-can-be-measured': 'Dentro de lo que se puede medir de su necesidad.',
  'says.reason.other': 'No se sabe ({code}).',
  'says.note.weather-starts-later':
    'El clima empieza el {from}, {days, plural, one {# día} other {# días}} antes del mes en lugar de {wanted}: lo que guardaba el suelo al principio es una suposición.',
  'says.note.weather-missing-before-month': '{days, plural, one {Falta un día} other {Faltan # días}} de clima antes del mes.',
  'says.note.weather-filled':
    'Se completó el clima: {neighbour, plural, =0 {ningún día} one {un día} other {# días}} con la estación vecina, {normals, plural, =0 {ningún día} one {un día} other {# días}} con lo habitual del mes.',
  'says.note.weather-rain-from-neighbour':
    'La lluvia de {days, plural, one {un día} other {# días}} es de la estación vecina: lo necesario es menos seguro por lo que difieren las dos.',
  'says.note.weather-rain-not-known':
    'No se sabe la lluvia de {days, plural, one {un día} other {# días}}: lo que necesitó un día así se estima por su ET de referencia y por los demás días, y es menos seguro por la lluvia que pudo caer.',
  'says.note.special-landscape-area-capped':
    'El área de paisaje especial, {special}, es mayor que todo lo regado, {irrigated}: se tomó la menor.',
  'says.note.volume-estimated': '{share} de lo {volume} es estimado: se completaron los días que faltan.',
  'says.note.programmed-from-weather':
    '{share} de lo programado es una estimación: {controller, select, none {un controlador} other {el controlador {controller}}} fija sus tiempos según el clima, y se supuso que dio lo que las plantas necesitaban, un 30 % más o menos.',
  'says.note.sources-contradict':
    'Del {from} al {until}, {source} dicen {volume}, pero {betterSource} dicen {betterVolume}. La cuenta toma {betterSource}.',
  'says.note.plants-establishing':
    '{zoneName}: plantas nuevas, a {share} de su establecimiento. Se toman raíces, necesidad y cobertura de plantas jóvenes.',
  'says.note.input-assumed':
    '{zones, plural, =0 {{input} es} one {{zoneName}: {input} es} other {# zonas: {input} es}} un supuesto, no una medida.',
  'says.note.other': 'Una nota para la que esta versión no tiene palabras ({code}).',
  'says.someZone': 'Una zona',
};
