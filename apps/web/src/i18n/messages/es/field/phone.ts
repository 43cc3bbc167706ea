import type { phone as english } from '../../en/field/phone.js';

/** Las palabras del teléfono mismo: qué hay en él y qué se envió. */
export const phone: Record<keyof typeof english, string> = {
  'field.sent.waits':
    '{isUnderWay, select, true {Enviando. } other {}}En este teléfono: {waiting, plural, =0 {} one {un registro} other {# registros}}{photos, plural, =0 {} one {{waiting, plural, =0 {} other {, }}una foto} other {{waiting, plural, =0 {} other {, }}# fotos}}. {last, select, never {Aún no se ha enviado nada.} other {Último envío: {last}.}}',
  'field.sent.refused':
    '{refused, plural, one {Un registro fue rechazado} other {# registros fueron rechazados}}: míralo aquí.{waiting, plural, =0 {} other { # más esperan.}}',
  'field.sent.disputed':
    '{isSelf, select, true {Dijiste otra cosa en otro lado} other {Otra persona dijo otra cosa}} de {disputed, plural, one {un registro tuyo} other {# registros tuyos}}: míralo aquí.{waiting, plural, =0 {} other { # más esperan.}}',
  'field.dayEnd.over': 'El día está terminado',
  'field.dayEnd.soFar': 'El día hasta ahora',
  'field.dayEnd.done':
    'Paradas cerradas: {closed} de {stops}; {done, plural, =0 {ninguna orden hecha} one {una orden hecha} other {# órdenes hechas}}{minutes, select, none {} other {, {minutes} de trabajo}}.',
  'field.dayEnd.left':
    '{left, plural, =0 {No queda nada para otro día{open, plural, =0 {} one {; falta cerrar una parada} other {; falta cerrar # paradas}}.} one {Una orden no está hecha.} other {# órdenes no están hechas.}}',
  'field.dayEnd.water': 'Lo que se hizo atiende hallazgos de {water}: si se mantiene, esa agua ya no se pierde.',
  'field.phone.keepsNothing':
    'Este navegador no guarda nada en el teléfono; sin señal se perdería el trabajo. Abre Rillbook fuera de una ventana privada.',
  'field.phone.notSaved':
    'El teléfono no pudo guardar lo último: está lleno o el navegador no lo permite. Apúntalo, haz espacio y guarda otra vez.',
  'field.phone.oldPage': 'Hay una versión más nueva de Rillbook abierta en este teléfono. Vuelve a cargar esta página para seguir.',
  'field.done.workedMinutes': 'Minutos de trabajo, entre todos',
  'field.done.workedMinutesHint': 'Si lo dejas vacío, cuenta una vez el tiempo aquí.',
  'field.done.wrongMinutes': '“{found}” no es un número de minutos. Escribe un número como 45.',
  'field.materials': 'Material usado',
  'field.materials.add': 'Agregar material',
  'field.materials.count': 'Cuántos, línea {number}',
  'field.materials.wrongCount': '{name}: “{found}” no dice cuántos son. Escríbelo con números, como 3 o 1.5.',
  'field.materials.name': 'De qué, línea {number}',
  'field.phone.title': 'En este teléfono',
  'field.phone.sendNow': 'Enviar ahora',
  'field.phone.again': 'Enviar otra vez',
  'field.phone.waiting':
    '{count, plural, =0 {{photos, plural, =0 {Nada espera} other {Todo lo escrito se envió}}} one {Un registro espera} other {# registros esperan}}',
  'field.phone.photos':
    '{count, plural, =0 {} one {Una foto espera; va después de lo escrito.} other {# fotos esperan; van después de lo escrito.}}',
  'field.phone.refused':
    '{count, plural, one {Uno fue rechazado. Se queda aquí hasta que se envíe.} other {# fueron rechazados. Se quedan aquí hasta que se envíen.}}',
  'field.phone.sent': 'Enviado en los últimos 30 días',
  'field.phone.noneSent': 'Todavía nada.',
  'field.phone.savedAt': 'guardado {when}',
  'field.phone.sentAt': 'enviado {when}',
  'field.phone.disputed':
    '{isSelf, select, true {{count, plural, one {Dijiste otra cosa en otro lado.} other {# veces dijiste otra cosa en otro lado.}}} other {{count, plural, one {Otra persona dijo otra cosa.} other {# veces otra persona dijo otra cosa.}}}} {count, plural, one {Se envió, y la oficina decide.} other {Se enviaron, y la oficina decide.}}',
  'field.phone.seen': 'Ya lo vi',
  'field.phone.seenAt': 'Visto {when}',
  'field.phone.conflict': '{isSelf, select, true {Dijiste otra cosa {who}} other {{who} dijo otra cosa}}; la oficina ve las dos.',
  'field.phone.parallel': 'Lo cambió {who} mientras tanto; lo tuyo vale.',
  'field.phone.named': 'La oficina conoce este teléfono como {name}.',
  'field.phone.bothSaid':
    '{label}: {isSelf, select, true {aquí dijiste {sent}, allá {other}} other {tú dijiste {sent}, {by} dijo {other}}}.',
  'field.refused.correct': 'Corregir',
  'field.refused.setAside': 'Dejar de lado',
  'field.refused.why': 'Por qué ya no se manda',
  'field.refused.whyNeeded': 'Escribe por qué, para que después se entienda.',
  'field.refused.wasSetAside': 'Dejado de lado {when}: {why}',
  'field.refused.saidAnew': 'Ya se dijo de nuevo.',
  'field.refused.over': 'Rechazado y ya resuelto',
  'field.refused.code.NOT_ALLOWED': 'Aquí no tienes permiso para esto. Pregunta al jefe de cuadrilla o a la oficina.',
  'field.refused.code.NOT_FOUND': 'Ya no existe, o se lo dieron a otra cuadrilla. Pregunta a la oficina.',
  'field.refused.code.VALUE_REFUSED': 'Algo de esto no puede ser. Corrígelo y guárdalo otra vez.',
  'field.refused.code.OPERATION_CONFLICT': 'La oficina tiene otra cosa con el mismo nombre. Guárdalo otra vez y tendrá uno nuevo.',
  'field.refused.code.OPERATION_UNKNOWN':
    'El servidor de la oficina es más viejo que este teléfono. Mándalo otra vez cuando lo actualicen.',
  'field.refused.code.DECIDED_MEANWHILE': 'Alguien ya lo decidió. Mira las dos cosas y avisa a la oficina.',
  'field.refused.code.UNFORESEEN': 'El servidor falló con esto. Mándalo otra vez; si lo rechaza de nuevo, avisa a la oficina.',
  'field.refused.code.TOO_LARGE': 'Es muy grande para mandarlo.',
  'field.refused.code.PICTURE_LOST': 'La foto ya no está en este teléfono. Tómala otra vez.',
  'field.phone.pictureWaits': 'su foto espera',
  'field.phone.room': 'Espacio en este teléfono: {used} de {whole} ocupados.',
  'field.phone.tight': 'El teléfono se está llenando. Envía mientras haya señal y borra lo que no necesites.',
  'field.phone.full':
    'El teléfono está lleno: no se pueden tomar fotos y puede que no se guarde lo que escribas. Haz espacio antes de escribir.',
  'field.phone.mayBeCleared':
    'El navegador puede borrar lo que hay en este teléfono si falta espacio o si pasan semanas sin usarlo. Envía mientras haya señal.',
  'field.phone.install':
    'Pon Rillbook en la pantalla de inicio: así el navegador conserva lo guardado y se abre sin señal. En el menú del navegador, o en su botón de compartir, elige agregar esta página a la pantalla de inicio.',
  'field.phone.others':
    '{isNamed, select, true {{name} tiene} other {Otra persona tiene}} {count, plural, one {una cosa} other {# cosas}} en este teléfono que la oficina no tiene. {isNamed, select, true {Solo {name} puede {count, plural, one {enviarla} other {enviarlas}}: entra aquí como {name} y abre Hoy.} other {Solo esa persona puede {count, plural, one {enviarla} other {enviarlas}}: que entre aquí y abra Hoy.}}',
  'field.phone.export': 'Guardar en un archivo lo que no se envió',
  'field.phone.resend': 'Enviar todo esto una vez más',
  'field.phone.isReady':
    '{ready, plural, =0 {Aún no está listo sin señal: cargando.} other {{isAll, select, true {Listo sin señal.} other {Listo sin señal: {ready} de {count} paradas.}}}}',
  'field.phone.pagesNotKept':
    'Aún no está listo sin señal: este navegador no ha guardado las páginas. Espera un momento; si sigue así, abre Rillbook fuera de una ventana privada.',
  'field.today.notHere':
    'Este día no está en el teléfono y no se pudo traer: {day}. {count, plural, =0 {Todavía no hay ningún día guardado: abre Hoy una vez mientras haya señal.} other {Sí tienes estos días:}}',
  'field.phone.toldAt': 'Datos de las {time}: la oficina no contesta desde entonces.',
  'field.photo.count': '{count, plural, =0 {Foto} one {# foto} other {# fotos}}',
  'field.photo.before': '{count, plural, =0 {Foto antes del trabajo} one {# foto antes del trabajo} other {# fotos antes del trabajo}}',
  'field.photo.after':
    '{count, plural, =0 {Foto después del trabajo} one {# foto después del trabajo} other {# fotos después del trabajo}}',
  'field.photo.noRoom':
    'Las fotos necesitan espacio y el teléfono está lleno: lo que queda es para lo escrito. Haz espacio y tómala otra vez.',
  'field.photo.keepPlace': 'Guardar dónde se tomó',
  'field.photo.noPlace': 'La foto quedó guardada. No dice dónde se tomó: puede que la cámara tenga la ubicación apagada.',
  'field.photo.broken': 'Esta foto no se puede leer. Tómala otra vez.',
  'field.what.photo': 'una foto',
  'field.phone.onlyHere':
    '{count, plural, one {Una cosa está} other {# cosas están}} solo en este teléfono. Al salir se borra lo que hay aquí: guárdalo primero en un archivo y dáselo a la oficina.',
  'field.phone.leaveAnyway': 'Borrar lo que hay aquí y salir',
  'field.phone.newVersion': 'Hay una versión nueva: llega cuando termines esta visita.',
};
