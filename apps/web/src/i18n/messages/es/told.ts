import type { told as english } from '../en/told.js';

export const told: Record<keyof typeof english, string> = {
  'told.sentence': '{what}: {when}, {sure}, {water}; primero, {first}',
  'told.onController': 'En el controlador {name}, {what}',
  'told.when.since': 'desde el {from}',
  'told.when.between': 'del {from} al {until}',
  'told.when.on': 'el {from}',
  'told.when.unknown': 'no se sabe desde cuándo',
  'told.sure.share': 'seguro al {share}',
  'told.sure.records': 'sin duda, pues se lee en los registros',
  'told.sure.eyes': 'visto por la cuadrilla',
  'told.sure.unknown': 'no se sabe con qué seguridad',
  'told.water.perMonth':
    'unos {litres}{money, select, none {} other { y {money}}} al mes{money, select, none {, a un precio que no está anotado} other {}}',
  'told.water.ofMonth':
    'unos {litres}{money, select, none {} other { y {money}}} en {month}{money, select, none {, a un precio que no está anotado} other {}}',
  'told.water.partOfMonth':
    'unos {litres}{money, select, none {} other { y {money}}} del {days}{money, select, none {, a un precio que no está anotado} other {}}',
  'told.water.once':
    '{times, plural, one {unos {litres}} other {hasta unos {litres}}}{money, select, none {} other { y {money}}}{times, plural, one {} other { cada vez}}{money, select, none {, a un precio que no está anotado} other {}}',
  'told.water.tooLittlePerMonth': 'faltan unos {litres} al mes',
  'told.water.tooLittleOfMonth': 'faltaron unos {litres} en {month}',
  'told.water.tooLittlePartOfMonth': 'faltaron unos {litres} del {days}',
  'told.water.differs': 'los dos difieren en unos {litres} al mes, cuyo dinero nadie puede decir antes de una prueba',
  'told.water.sourcesDiffer': 'los dos difieren en unos {litres}, cuyo dinero nadie puede decir antes de corregir uno',
  'told.water.claimed': 'dice unos {litres}, que nadie puede valorar antes de corregirla',
  'told.water.reading': 'el agua y el dinero no se pueden decir antes de corregirla',
  'told.water.unknown': 'no se sabe cuánta agua ni cuánto dinero al mes',
  'told.what.overwatered': 'Por el medidor pasó más de lo que las plantas necesitaban, y no se sabe lo programado',
  'told.what.over-programmed':
    '{programs, plural, =0 {Los ajustes dan} one {El programa {programNames} da} other {Los programas {programNames} dan}} a {zones, plural, =0 {las plantas} one {{zoneName}} other {# zonas}} más de lo que las plantas necesitan{unchanged, select, none {} other {, sin cambios en {unchanged} días mientras la necesidad bajó un {fell}}}',
  'told.what.under-programmed':
    '{programs, plural, =0 {Los ajustes dan} one {El programa {programNames} da} other {Los programas {programNames} dan}} a {zones, plural, =0 {las plantas} one {{zoneName}} other {# zonas}} menos de lo que las plantas necesitan',
  'told.what.unexplained use':
    'Por el medidor pasó agua que ningún programa explica{ratio, select, none {} other {, el {ratio} de lo programado}}{usual, select, none {} other { frente al {usual} de meses anteriores}}',
  'told.what.not delivering':
    'Solo el {ratio} de lo programado pasó por el medidor{usual, select, none {} other {, {usual} en meses anteriores}}',
  'told.what.not delivering zone':
    'Por {zones, plural, =0 {una zona} one {{zoneName}} other {# zonas}} casi no pasa agua cuando debe correr',
  'told.what.not delivering pressure': 'Por todas las zonas juntas pasa solo el {ratio} del caudal habitual',
  'told.what.not delivering runs':
    'No pasó nada por el medidor en {days, plural, =0 {días} one {un día} other {# días}} en que debían correr programas y ninguna lluvia lo explica',
  'told.what.flow to be tested':
    'Lo medido es siempre cerca del {usual} de lo programado, así que los caudales anotados de las zonas probablemente están mal',
  'told.what.over allowance':
    'Por el medidor pasó más de lo permitido{running, select, no {} other {, en {daysCovered} de {daysInMonth} días; {band, select, within {el mes probablemente termina dentro de lo permitido} upTo {al final del mes unos {projected}, nueve de cada diez veces a lo más {upper}} both {al final del mes unos {projected}, nueve de cada diez veces entre {lower} y {upper}} other {{projected} al final del mes a este paso}}}}',
  'told.what.lower than last':
    'El registro {next} es menor que el anterior, {previous}, y ni una vuelta ni un cambio de medidor lo explican',
  'told.what.implausibly high': 'El registro {next} después de {previous} es más agua de la que pudo correr',
  'told.what.stuck': 'El registro sigue en {next}, aunque tuvo que correr agua',
  'told.what.unit mixed up':
    'El registro {next} después de {previous} parece estar en otra unidad{factor, select, none {} other { (un factor de {factor})}}',
  'told.what.digits swapped': 'El registro {next} después de {previous} probablemente tiene dos cifras cambiadas',
  'told.what.digit mistyped': 'El registro {next} después de {previous} probablemente tiene una cifra equivocada',
  'told.what.sources-contradict':
    'De los mismos días {source} dicen {volume}, pero {betterSource}, que toma la cuenta, dicen {betterVolume}',
  'told.what.stale': 'Sin noticias desde hace mucho, con {what}',
  'told.what.steady flow': 'Por el medidor pasan sin parar unos {flow}, también cuando nada debe correr',
  'told.what.off-schedule run':
    'Corrió agua {times, plural, one {una vez} other {# veces}} fuera de todo programa{clock, select, none {} other {, hacia las {clock}}}, {each} cada vez',
  'told.what.watered in rain':
    'Los ajustes corrieron {days, plural, one {un día} other {# días}} en que {rain} de lluvia ya cubrían lo que las plantas necesitaban',
  'told.what.zone flow changed':
    'Por {zones, plural, =0 {una zona} one {{zoneName}} other {# zonas}} pasan {flow}, {change, select, more {más} other {menos}} que lo habitual, {usual}',
  'told.what.breaks a rule':
    '{programs, plural, =0 {Los ajustes incumplen} one {El programa {programNames} incumple} other {Los programas {programNames} incumplen}} {rule, select, none {una regla de riego} other {la regla «{rule}»}}',
  'told.what.mixed water needs':
    'En {zones, plural, =0 {una zona} one {{zoneName}} other {# zonas}} hay plantas con necesidades distintas, y se riega para la más sedienta',
  'told.what.seen on site':
    'Visto en el sitio{where, select, none {} other { en {where}}}, {what}{count, plural, one {} other {, # en total}}{word, select, none {} other { («{word}»)}}',
  'told.first.overwatered': 'lea el controlador',
  'told.first.over-programmed':
    'compare el controlador con los ajustes anotados{percent, select, none {} other {, de cuyos minutos bastaría cerca del {percent}}}',
  'told.first.under-programmed':
    'mire las plantas y luego {percent, select, none {ponga un riego, pues ahora no corre nada allí} other {alargue los minutos a cerca del {percent} de los actuales}}',
  'told.first.unexplained use': 'cierre la llave sin que corra nada y mire si el registro sigue girando',
  'told.first.not delivering': 'vea si el controlador está encendido y luego abra cada válvula a mano',
  'told.first.not delivering zone': 'revise su válvula y su cableado',
  'told.first.not delivering pressure': 'revise la presión, una válvula principal o un filtro',
  'told.first.not delivering runs': 'revise el controlador y la válvula maestra',
  'told.first.flow to be tested': 'haga correr cada zona dos minutos y lea el registro antes y después',
  'told.first.over allowance': 'mire la diferencia mayor de su cuenta',
  'told.first.lower than last': 'lea el medidor otra vez{likely, select, none {} other {, pues probablemente era {likely}}}',
  'told.first.implausibly high': 'lea el medidor otra vez, con foto',
  'told.first.stuck': 'mire el registro mientras corre una zona',
  'told.first.unit mixed up': 'compare su unidad con la anotada{likely, select, none {} other {, pues probablemente era {likely}}}',
  'told.first.digits swapped': 'vea si era {likely}',
  'told.first.digit mistyped': 'vea si era {likely}',
  'told.first.sources-contradict': 'compare los dos para estos días',
  'told.first.stale': 'lea el medidor y el controlador en la próxima visita',
  'told.first.steady flow': 'busque una fuga, un tubo roto o una válvula que no cierra',
  'told.first.off-schedule run': 'busque una segunda hora de inicio, un segundo programa o una válvula que abre sola',
  'told.first.watered in rain': 'pruebe el sensor de lluvia',
  'told.first.zone flow changed':
    '{change, select, more {busque un aspersor o un tubo roto} other {busque una obstrucción, un aspersor cerrado o una válvula que abre a medias}}',
  'told.first.breaks a rule': 'lea la regla y mueva días y horas de inicio dentro de ella',
  'told.first.mixed water needs': 'mire si las plantas con más sed se pueden mover o tener su propia línea',
  'told.first.seen on site': 'mire las fotos y lo que escribió la cuadrilla',
  'told.first.other': 'mire las pruebas de abajo',
};
