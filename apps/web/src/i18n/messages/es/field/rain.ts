import type { rain as english } from '../../en/field/rain.js';

export const rain: Record<keyof typeof english, string> = {
  'rain.title':
    '{count, plural, =0 {Nadie tiene que ir: {all, plural, =0 {ningún controlador necesita pausa} one {el único controlador donde llovió se pausa solo} other {los # controladores donde llovió se pausan solos}}} one {Un controlador se puede pausar después de la lluvia} other {# controladores se pueden pausar después de la lluvia}}',
  'rain.tab': 'Pausas por lluvia',
  'rain.lede':
    'Cada uno puede quedar parado hasta que la primera de sus zonas vuelva a necesitar agua. A las plantas nuevas, enfermas y grandes hay que verlas antes de quitarles el agua.',
  'rain.print': 'Imprimir',
  'rain.none': 'No hay nada que pausar',
  'rain.noneHow':
    'En ninguna propiedad con estación llovió en los últimos cuatro días tanto que sus plantas vivan de eso un día o más. La lista se llena cuando llega el clima, o cuando se escribe un día en Configuración.',
  'rain.toGo': '{count, plural, one {Un controlador que hay que pausar a mano} other {# controladores que hay que pausar a mano}}',
  'rain.themselves': '{count, plural, one {Un controlador se pausa solo} other {# controladores se pausan solos}}',
  'rain.themselvesNote':
    'Nadie tiene que ir. El sensor de lluvia deja regar otra vez cuando se seca, por lo común en uno o dos días: lo que se guarda es el resto, si alguien lo pausa hasta el día que se ve.',
  'rain.head.controller': 'Controlador',
  'rain.head.rain': 'Lluvia de cuatro días',
  'rain.head.until': 'Vuelve a regar',
  'rain.head.because': 'Por qué entonces',
  'rain.head.kept': 'Se guarda',
  'rain.lastOn': 'la última, {day}',
  'rain.days': '{days, plural, one {hoy sin riego} other {# días sin riego, contando hoy}}',
  'rain.because':
    '{because, select, rule {Una regla de riego lo prohíbe hasta entonces} longest {Más no conviene pausar: hay que ver otra vez entonces} practice {Falta anotar el suelo o las plantas de una zona: 48 horas a lo más, como se acostumbra} other {{zone} es la primera que necesita agua}}',
  'rain.itself':
    '{why, select, weather {Calcula solo sus tiempos} off {Está apagado} paused {{until, select, none {Está en pausa, sin fin anotado} other {Está en pausa hasta el {until}}}} other {Tiene sensor de lluvia}}',
  'rain.ordered': 'orden {state}',
  'rain.sum': 'Se guarda en total{unknown, plural, =0 {} one {, sin uno del que no se sabe} other {, sin # de los que no se sabe}}',
  'rain.choose': 'Pausar {controller} en {property}',
  'rain.chooseAll': 'Elegir todos: {table}',
  'rain.chosen':
    '{count, plural, =0 {Elija los controladores que hay que pausar, y luego la cuadrilla que va} one {Un controlador elegido} other {# controladores elegidos}}. Cada orden dice qué día vuelve a regar su controlador.',
  'rain.method':
    'Lluvia como la midió la estación de cada propiedad, hasta hoy. La zona de raíces se calcula como regada según su necesidad hasta que llovió; donde las plantas ya estaban secas, véalas primero. Después de hoy cuenta la evapotranspiración usual de la estación, sin lluvia: no hay pronóstico. Los reglamentos locales mandan.{without, plural, =0 {} one { De una propiedad no se puede decir nada: no tiene estación, o le faltan los últimos días.} other { De # propiedades no se puede decir nada: no tienen estación, o le faltan los últimos días.}}',
  'rain.link': 'Ver qué controladores se pueden pausar',
  'rain.link.fell': 'Llovieron {rain} en {station}, la última vez el {day}.',
  'work.rainPause': 'Pausa por lluvia, vuelve a regar el {day}: {what}',
  'work.overtaken':
    'Superada: este controlador tiene ajustes planeados más nuevos, del {at}, con una orden propia. Introduce los más nuevos.',
  'work.overtaken.done':
    'Superada: en este controlador ya se introdujeron ajustes planeados más nuevos, del {at}. No vuelvas a los de esta orden.',
};
