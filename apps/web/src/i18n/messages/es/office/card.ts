import type { card as english } from '../../en/office/card.js';

export const card: Record<keyof typeof english, string> = {
  'card.open': 'La tarjeta del año para el gabinete, lista para imprimir',
  'card.title': '{property}, controlador {name}: la tarjeta para el gabinete',
  'card.tab': '{property} {name}: tarjeta del gabinete',
  'card.print': 'Imprimir la tarjeta',
  'card.none': 'Todavía no hay tarjeta',
  'card.once': 'Se mete una sola vez',
  'card.once.note': 'El programa completo de {month}, el mes que más necesita. Se queda puesto; solo se mueve el porcentaje.',
  'card.short':
    '{count, plural, one {La estación {stations} recibe} other {Las estaciones {stations} reciben}} menos de la mitad de lo que las plantas necesitan ese mes: las reglas, las horas o el controlador no dan para más. El plan en la página de la propiedad dice por qué y qué lo resolvería. Ahí los árboles y las plantas jóvenes necesitan riego a mano.',
  'card.percents': 'Se mueve cada mes',
  'card.percents.note': 'El porcentaje de cada programa. Debajo van los días y las horas cuando las reglas del mes piden otros.',
  'card.under':
    'En {months} estos programas dan menos de tres cuartos de lo que las plantas necesitan: las reglas y las horas no dejan más a estos días y porcentajes. Ponga el programa completo de {count, plural, one {ese mes} other {cada uno de esos meses}} desde el plan en la página de la propiedad, y mire las plantas.',
  'card.over':
    'En {months} estos programas dan más de una cuarta parte por encima de lo que las plantas necesitan: con sus porcentajes y días no se ajusta mejor. Si esa agua importa, meta el programa completo de {count, plural, one {ese mes} other {cada uno de esos meses}}; está en el plan, en la página de la propiedad.',
  'card.month': 'Mes',
  'card.program': 'Programa {name}',
  'card.needed': 'Necesita, {unit}',
  'card.used': 'Recibe, {unit}',
  'card.off': 'apagado',
  'card.own': 'un programa propio',
  'card.minutes': 'Lo mismo en minutos',
  'card.minutes.note': 'Minutos por cada arranque, con todos los ciclos, para un controlador en el que no se usa el porcentaje.',
  'card.station': 'Programa, estación',
  'card.winter': 'Invierno y primavera',
  'card.frost':
    '{count, plural, =0 {Ninguna helada en {days, number} días medidos por la estación meteorológica de esta propiedad. De todos modos, esté pendiente del pronóstico.} one {Se midieron heladas en {months}: cierre antes de que empiece ese mes y arranque cuando haya terminado.} other {Se midieron heladas en {months}: cierre antes del primero de esos meses y arranque después del último.}}',
  'card.frost.unknown':
    'Aquí nadie ha medido las temperaturas mínimas. Guíese por el pronóstico: cierre antes de la primera noche de helada.',
  'card.winter.heading': 'Antes de la primera helada',
  'card.winter.shut': 'Cierre la llave que corta solo el riego y anote dónde está.',
  'card.winter.off': 'Apague el controlador; deje guardados sus programas.',
  'card.winter.drain': 'Saque el agua de las líneas por los drenajes y deje las válvulas y el ensamble como dice el fabricante.',
  'card.winter.air':
    'Si las líneas se vacían con aire, lo hace una persona capacitada, con los ojos protegidos y nadie cerca de los aspersores.',
  'card.spring.heading': 'Después de la última helada',
  'card.spring.open': 'Abra la llave despacio, un cuarto de vuelta a la vez, para que las líneas se llenen sin golpe.',
  'card.spring.walk': 'Haga correr cada zona y recórrala: aspersores rotos, fugas, boquillas tapadas.',
  'card.spring.test': 'Mande probar el ensamble contra reflujo si ya toca la prueba.',
  'card.spring.enter': 'Ponga el porcentaje del mes y revise la hora y la fecha del controlador.',
  'card.caution.mains': 'Un controlador puede tener voltaje de línea: el cableado es trabajo de un electricista con licencia.',
  'card.caution.air':
    'El aire y el agua a presión pueden lastimar: nunca se pare sobre un aspersor, una válvula o un ensamble con presión.',
  'card.caution.backflow': 'Los ensambles contra reflujo los abren y los prueban solo técnicos certificados.',
  'card.caution.law':
    'Esta tarjeta es un consejo. El reglamento local, las reglas del proveedor de agua y la práctica con licencia están por encima.',
  'card.weather':
    '{fewest, plural, one {Lo que las plantas necesitan sale del clima de {years}. {most, plural, one {Cada mes} other {Por lo menos un mes}} se basa en un solo año: súbale o bájele cuando este año sea distinto.} other {Lo que las plantas necesitan es el promedio de los mismos meses de {years}, por lo menos # años de cada uno.}}',
  'card.night': 'El día empieza a medianoche: un arranque a las {clock} es la madrugada del día indicado, no la noche que le sigue.',
  'card.foot': 'Hecha por {organization} el {day}. Las plantas jóvenes, enfermas o grandes se revisan en persona antes de quitarles agua.',
};
