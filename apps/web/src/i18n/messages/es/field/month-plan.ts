import type { monthPlan as english } from '../../en/field/month-plan.js';

/** Las palabras del plan del mes y de la hoja de ruta. */
export const monthPlan: Record<keyof typeof english, string> = {
  'monthPlan.title':
    '{stops, plural, =0 {Este mes no hay paradas} one {Una parada este mes, {drive} de manejo} other {# paradas este mes, {drive} de manejo}}; {unplaced, plural, =0 {todo tiene día} one {una cosa no tiene día} other {# cosas no tienen día}}',
  'monthPlan.tab': 'Planear el mes',
  'monthPlan.make': 'Planear el mes',
  'monthPlan.making': 'Planeando…',
  'monthPlan.made':
    'Planeado: {moved, plural, =0 {nada cambió} one {una parada cambió de día} other {# paradas cambiaron de día}}, {unplaced, plural, =0 {todo tiene día} one {una no cupo} other {# no cupieron}}.',
  'monthPlan.undo': 'Deshacer el plan',
  'monthPlan.undone': 'Plan deshecho: todo lo que movió está otra vez donde estaba.',
  'monthPlan.how':
    'Arrastre una parada a otra cuadrilla o a otro día. Con el teclado: Mayús y una flecha la llevan, L la fija, Entrar pregunta cuadrilla, día y lugar. Lo que usted mueve queda fijo y se queda ahí cuando se planea otra vez.',
  'monthPlan.board': 'Días hacia abajo, cuadrillas a lo ancho',
  'monthPlan.dayOf': '{crew}, {stops, plural, =0 {sin paradas} one {una parada} other {# paradas}}',
  'monthPlan.off': 'libre',
  'monthPlan.dayLine':
    'Sale {leaves}, regresa {home}; manejo {drive}, trabajo {work} de {most}{waits, select, none {} other {, espera {waits}}}.',
  'monthPlan.sheet': 'Hoja de ruta',
  'monthPlan.visit': 'visita',
  'monthPlan.locked': 'fija',
  'monthPlan.visited': 'visitada',
  'monthPlan.lockedNow': '{name} queda fija en su día.',
  'monthPlan.freeNow': '{name} se puede mover cuando se planee otra vez.',
  'monthPlan.carried': '{name} va ahora con {crew}, {day}.',
  'monthPlan.moveTitle': '¿Quién va a {name}, y cuándo?',
  'monthPlan.position': 'Lugar en el orden del día',
  'monthPlan.lock': 'Fijarla en este día',
  'monthPlan.lockHint': 'Se queda ahí cuando el mes se planea otra vez.',
  'monthPlan.move': 'Mover',
  'monthPlan.unplaced': '{count, plural, =0 {Todo tiene día} one {Una cosa no tiene día} other {# cosas no tienen día}}',
  'monthPlan.due': 'toca visita el {day}',
  'monthPlan.place': 'Darle un día',
  'monthPlan.placeOf': 'Darle un día: {name}',
  'monthPlan.misfit': 'No cabe:',
  'monthPlan.misfit.late':
    '{isReached, select, true {a {name} se llega {by} después de su horario} other {ese día {name} no abre el tiempo que toma el trabajo}}.',
  'monthPlan.misfit.homeLate': 'la cuadrilla regresa {by} después de su hora de salida.',
  'monthPlan.misfit.tooBusy': '{by} más de trabajo y manejo de lo que da el día.',
  'monthPlan.misfit.tooMuchLoad': 'más paradas de las que una cuadrilla hace en un día.',
  'monthPlan.misfit.notAllowed': '{name} pide algo que esta cuadrilla no sabe hacer, o no se sabe dónde está.',
  'monthPlan.misfit.pastDue': 'el trabajo en {name} era para antes de este día.',
  'monthPlan.why.notPlannedYet': 'Todavía no se ha planeado.',
  'monthPlan.why.missed': 'Nadie fue el {day}.',
  'monthPlan.why.noPosition': 'No se sabe dónde está la propiedad. Ponga su latitud y longitud en Ajustes.',
  'monthPlan.why.noSkill': 'Ninguna cuadrilla sabe hacer esto: {skills}. Apúntelo en la cuadrilla que sí sabe, o déselo a otra persona.',
  'monthPlan.why.noDay': 'Ninguna cuadrilla trabaja en los días en que esto se puede hacer.',
  'monthPlan.why.neverOpen':
    'La propiedad nunca está abierta el tiempo que hace falta mientras trabaja una cuadrilla: el trabajo toma {work}. Revise su horario.',
  'monthPlan.why.tooLong': 'El trabajo toma {work} con la ida y la vuelta, y el día más largo tiene {most}. Divídalo en dos órdenes.',
  'monthPlan.why.daysFull': 'Todos los días posibles están llenos: hacen falta {needs} con el manejo, y al más vacío le quedan {room}.',
  'monthPlan.why.hoursClash': 'Hay tiempo, pero el horario de esta propiedad no va con el de las paradas de al lado.',
  'monthPlan.why.driveTooLong': 'Sumaría {added} de manejo: más de lo que vale este mes. Déle un día a mano si tiene que ser.',
  'monthPlan.straightLine':
    'Los tiempos de manejo son un cálculo en línea recta: la distancia por {factor}, a {speed}, más {minutes} min por cada viaje.',
  'monthPlan.byServer': 'Los tiempos de manejo vienen de su propio servidor de rutas.',
  'monthPlan.serverFault':
    'No se usó su servidor de rutas: {fault, select, reached {no se pudo llegar a él} time {no contestó a tiempo} refused {no quiso contestar} other {lo que contestó no es una tabla completa de tiempos}}. Quien maneja este servidor encuentra más en su registro.',
  'monthPlan.pace': '{crew} tarda {factor} veces lo calculado, según {visits, plural, one {una visita} other {# visitas}}.',
  'monthPlan.noPace': '{crew}: las horas son las calculadas; hay muy pocas visitas para saber cuánto tarda.',
  'monthPlan.caution':
    'El plan es un consejo: decide quien conoce el camino, el clima y la cuadrilla. Con calor, deje el trabajo pesado para temprano.',
  'sheet.title': 'Hoja de ruta: {stops, plural, =0 {sin paradas} one {una parada} other {# paradas}}',
  'sheet.tab': 'Hoja de ruta {day}',
  'sheet.print': 'Imprimir',
  'sheet.none': 'Ninguna cuadrilla tiene paradas este día.',
  'sheet.care':
    'Los controladores pueden tener corriente de la red: dentro del gabinete solo trabaja un electricista con licencia. Antes de excavar, llame para que marquen las líneas de servicio. Las tuberías tienen presión. Tome agua y descanse en la sombra.',
  'sheet.times': 'Llegada, salida',
  'sheet.register': 'Lectura de {name}',
  'monthPlan.replan': 'Planear de nuevo lo que queda de hoy',
  'monthPlan.replanOf': 'Planear de nuevo lo que queda de hoy: {crew}',
  'monthPlan.replanned':
    'Planeado desde ahora: {moved, plural, =0 {nada se movió} one {una parada tiene otra cuadrilla u otro día} other {# paradas tienen otra cuadrilla u otro día}}, {unplaced, plural, =0 {todo lo que quedaba de hoy tiene su día} one {una cosa no encontró día} other {# cosas no encontraron día}}.',
  'season.open': 'Cambio de temporada',
  'season.title': 'Ajustes para {month}',
  'season.what': 'Ajustar el controlador como está planeado para {month}',
  'season.how':
    'Se planea cada controlador para el mes. Donde ajustes nuevos corrigen más agua que su mínimo y que la décima parte de lo necesario, o lo que está puesto rompe una regla, se hace una orden para ajustarlo. Las órdenes reciben día al planear el mes. Un controlador que ya tiene un ajuste pendiente conserva ese.',
  'season.make': 'Ver todos los controladores',
  'season.goOn': 'Seguir',
  'season.looked':
    '{looked} de {all, plural, one {# propiedad vista} other {# propiedades vistas}}, {made, plural, =0 {ninguna orden hecha} one {una orden hecha} other {# órdenes hechas}}.',
  'season.over':
    '{all, plural, one {Vista # propiedad} other {Vistas las # propiedades}}: {made, plural, =0 {ningún controlador vale el viaje} one {una orden hecha} other {# órdenes hechas}}.',
  'season.close': 'Cerrar',
  'sheet.map': 'Dónde están las {stops} paradas, en su orden',
  'sheet.mapHow':
    'El norte está arriba. Las líneas muestran el orden, no los caminos{hasStart, select, true {; el cuadro lleno es de donde sale el día} other {}}.{missing, plural, =0 {} one { Una parada todavía no tiene posición.} other { # paradas todavía no tienen posición.}}',
};
