import { expectedInSpanish } from './spanish-expected.js';
import { fieldInSpanish } from './spanish-fields.js';
import { pointerInSpanish, ruleInSpanish } from './spanish-rules.js';
import { kindInSpanish, permissionInSpanish, stateInSpanish, thingInSpanish } from './spanish-words.js';

/** Details of a problem, by name, as the server gave them. */
export type Details = Readonly<Record<string, unknown>>;

/** A value as it is written; what is not there as dots. */
const written = (value: unknown): string =>
  value === undefined ? '…' : value === null ? 'nada' : typeof value === 'object' ? JSON.stringify(value) : String(value);
const quoted = (value: unknown): string => (typeof value === 'string' ? `«${value}»` : written(value));

const refusedValue = ({ field, found, expected }: Details): string => {
  if (field === undefined) return 'Un valor no se puede guardar. Revise lo escrito y pruebe otra vez.';
  const wanted = expectedInSpanish(written(expected)) ?? written(expected);
  return `${fieldInSpanish(field)}: se encontró ${quoted(found)}; se espera ${wanted}.`;
};

/** Every problem that the server can say, in Spanish, by its code. */
export const spanishProblems: Readonly<Record<string, (details: Details) => string>> = {
  SIGN_IN_NEEDED: () => 'Inicie sesión primero: no hay sesión, o ya terminó.',
  NOT_ALLOWED: (d) => `Su función no incluye esto (${permissionInSpanish(d['permission'])}). Pídalo a un dueño de la organización.`,
  NOT_FOUND: (d) => `Ya no está aquí (${thingInSpanish(d['thing'])}). Puede que se haya quitado: cargue la página de nuevo.`,
  VALUE_REFUSED: refusedValue,
  RULE_BROKEN: (d) => ruleInSpanish(written(d['rule'])),
  POINTS_NOWHERE: (d) => pointerInSpanish(written(d['rule'])),
  TOO_MANY_TRIES: (d) => `Demasiados intentos. Pruebe otra vez en ${written(d['retryInSeconds'])} segundos.`,
  QUERY_TOO_LARGE: () => 'Se pidió demasiado de una vez. Pídalo por partes.',
  BUSY: () => 'Otra persona cambiaba lo mismo en ese momento. No se cambió nada; hágalo otra vez.',
  UNFORESEEN: (d) => `Algo salió mal que no estaba previsto. Quedó anotado con el número ${written(d['logged'])}; no se cambió nada.`,

  WRONG_PASSWORD: () => 'Esta no es la contraseña actual. Escríbala de nuevo; no se cambió nada.',
  INVITATION_NOT_VALID: () =>
    'Esta invitación ya se usó, se reemplazó o tiene más de siete días. Pida una nueva a un dueño de la organización.',
  ALREADY_MEMBER: (d) => `${written(d['email'])} ya es integrante. Cambie su función en la lista de personas.`,
  LAST_OWNER: () => 'Es el último dueño de la organización. Nombre antes a otro.',
  CHANGED_MEANWHILE: (d) =>
    `Alguien cambió esto mientras lo veía (${thingInSpanish(d['thing'])}, ahora versión ${written(d['version'])}). Cargue la página de nuevo y decida.`,
  SERVER_NOT_EMPTY: () => 'Ya hay una organización en este servidor. Pida una invitación a uno de sus dueños.',
  NOT_A_DEMO: () => 'Esta organización no es una demostración; no se vacía.',

  NOT_A_PICTURE: (d) =>
    `No es una imagen que se pueda guardar: se encontró ${written(d['found'])}; se espera JPEG, PNG o WebP. Guárdela como JPEG y mándela otra vez.`,
  PICTURE_TOO_LARGE: (d) => `La imagen pasa de ${written(d['most'])}. Mande una más pequeña.`,
  PICTURE_TOO_WIDE: () => 'La imagen tiene demasiados puntos. Mande una más pequeña.',
  PICTURE_BROKEN: () => 'La imagen está dañada: no se puede leer hasta el final. Tómela otra vez, o mande otra.',

  ACCOUNTS_NOT_COMPUTED: (d) =>
    `No se pudo calcular ninguna cuenta de ${written(d['properties'])}. Corrija el valor y calcule otra vez; las cuentas de las otras ${written(d['others'])} están al día.`,

  FINDING_NOT_OPEN: () => 'Solo se puede dejar en espera un hallazgo que esté abierto o en trabajo. Ábralo otra vez primero.',

  WORK_ORDER_ENDED: (d) => `La orden de trabajo ya terminó (${stateInSpanish(d['state'])}). Haga otra para lo que falta.`,
  WORK_ORDER_EXISTS: (d) =>
    `El hallazgo ya tiene una orden de trabajo de la clase «${kindInSpanish(d['kind'])}» sin terminar. Cambie esa, o elija otra clase.`,
  WORK_ORDER_NOT_WAITING: (d) => `La orden de trabajo no espera aprobación (${stateInSpanish(d['state'])}). Cargue la página de nuevo.`,
  WORK_ORDER_NOT_PRICED: () =>
    'La orden de trabajo aún no tiene precio, o tiene horas sin tarifa. Ponga antes el precio y apruébela después.',
  FINDING_SETTLED: () => 'El hallazgo ya se cerró. Ábralo otra vez antes de repartir trabajo.',
  VISIT_CONFLICT: () => 'Esta visita ya está guardada con otra parada u otra llegada. Registre una visita nueva.',
  PHOTO_CONFLICT: (d) => `Esta foto ya está guardada con otra clase u otra hora (${kindInSpanish(d['kind'])}). Tome una nueva.`,
  VISIT_NOT_EMPTY: () =>
    'La visita se queda: algo se registró en la parada, o la llegada es de otra persona. Cierre la parada y diga qué se hizo.',
  PICTURE_CONFLICT: () => 'Esta foto ya tiene otra imagen. Tome una foto nueva.',
  PICTURE_NOT_HERE: () => 'La imagen de esta foto no ha llegado: sigue en el teléfono que la tomó. Pruebe más tarde.',
  ZONE_TEST_CONFLICT: () => 'Esta prueba ya está guardada con otra zona, clase u hora. Registre una nueva.',
  PLAN_NOT_LAST: () =>
    'Este plan no es el último de su mes, o ya se deshizo. Cargue el mes de nuevo; las paradas sueltas todavía se pueden mover a mano.',
  NOTHING_TO_PLACE: () => 'Ya no está sin día en este mes. Cargue el mes de nuevo: puede que ya tenga uno.',
  STOP_VISITED: () => 'La parada ya se visitó y se queda en su día. Haga otra orden de trabajo para lo que falta.',
  STOP_MOVED_MEANWHILE: (d) =>
    `${written(d['changedBy'] ?? 'Alguien')} movió o fijó esta parada mientras tanto. Vea dónde está ahora y decida de nuevo.`,
  CHANGED_SINCE_READ: (d) =>
    `${written(d['changedBy'] ?? 'Alguien')} cambió esto mientras lo veía (${thingInSpanish(d['thing'])}). Cargue la página de nuevo y decida.`,

  OPERATION_CONFLICT: () => 'Esto ya llegó con otro contenido. Vale lo que llegó primero; guárdelo otra vez y tendrá un nombre nuevo.',
  OPERATION_UNKNOWN: () => 'Este servidor no conoce esta clase de dato. Se guardó como llegó: actualice el servidor y mándelo otra vez.',
  DECIDED_MEANWHILE: (d) => `Ya se decidió entretanto (${stateInSpanish(d['state'])}). Mire las dos cosas y decida.`,
  NOTHING_TO_CHOOSE: () => 'Aquí no hay nada entre qué elegir: véalo en su lugar y márquelo como visto.',
  BATCH_TOO_LARGE: (d) =>
    `Llegaron ${written(d['found'])} datos de una vez; se toman ${written(d['most'])} como máximo. Mándelos por partes.`,

  REPORT_NOT_DRAFT: (d) =>
    `El informe de ${written(d['report'])} está ${stateInSpanish(d['state'])}: se queda como está. Retire la aprobación, o haga un informe nuevo.`,
  REPORT_ALREADY_OUT: (d) =>
    `El informe de ${written(d['report'])} se envió, o pudo haberse enviado: se queda como está. Envíe uno corregido como informe nuevo.`,
  REPORT_REACHES_NOBODY: (d) =>
    `El informe de ${written(d['report'])} no se envió a nadie, porque no queda ningún correo por enviar: ${mailsInSpanish(d['mails'])}. Diga de cada correo si llegó o si se envía otra vez, o dele al cliente otra dirección.`,
  REPORT_FIGURES_CHANGED: (d) =>
    `Las cifras del informe de ${written(d['report'])} cambiaron desde que las vio. Cargue la página de nuevo, mírelo y apruébelo después.`,
  OFFER_NOT_MADE: () => 'El precio de este trabajo aún no se sabe. Espere la propuesta de la oficina y apruébelo después.',
  OFFER_CHANGED: () => 'Lo que se propone, o su precio, cambió desde que lo vio. Cargue la página de nuevo y decida.',
  REPORT_NOT_APPROVED: (d) => `El informe de ${written(d['report'])} es un borrador. Mírelo y apruébelo antes de enviarlo o compartirlo.`,
  REPORT_CHANGED_MEANWHILE: (d) => `El informe de ${written(d['report'])} cambió en el mismo momento. Cargue la página de nuevo y decida.`,
  MAIL_NOT_OPEN: (d) => `Del correo ya se sabe qué pasó (${stateInSpanish(d['state'])}). Cargue la página de nuevo.`,
  SHARE_LINK_NOT_VALID: () => 'Este enlace ya no sirve. Pida uno nuevo a su empresa de jardinería.',
  TOO_MANY_QUESTIONS: (d) =>
    `Se hicieron ${written(d['most'])} preguntas sobre este informe en un día. Llame a la oficina, o pregunte otra vez mañana.`,
  REPORT_WITHOUT_PROPERTY: (d) =>
    `${written(d['client'])} no tiene ninguna propiedad en uso: no hay nada que informar. Añada una propiedad, o elija otro cliente.`,
  REPORT_NOT_PRINTED: () => 'No se pudo hacer el PDF. El informe mismo está a salvo; pruebe otra vez, o mírelo como página.',

  IMPORT_UNDER_WAY: () => 'Hay otra importación o exportación en marcha. Espere a que termine y pruebe otra vez.',
  IMPORT_FILE_CHANGED: () => 'Los archivos no son los que se revisaron. No se importó nada: súbalos otra vez.',
  IMPORT_NOT_FOUND: () => 'Esta subida ya no está. Se guardan un día: suba los archivos otra vez.',
  IMPORT_ROWS_WRONG: (d) =>
    `Hay ${written(d['problems'])} problemas en los archivos, así que no se importó nada. Corrija las filas, o importe solo las buenas.`,
  IMPORT_NOTHING_GOOD: () => 'Los archivos no tienen filas que se puedan importar. Corríjalos y súbalos otra vez.',
  REQUEST_NOT_FROM_PAGES: () => 'La petición no vino de una página de Rillbook.',
  UPLOAD_EXPECTED: () => 'No se subieron archivos. Elíjalos y mándelos otra vez.',
  UPLOAD_EMPTY: () => 'La subida no tiene ningún archivo. Elija archivos CSV, un .zip de ellos o un libro .xlsx.',
  UPLOAD_TOO_LARGE: (d) => `La subida pasa de ${written(d['most'])}. Divídala en varias, o importe una carpeta desde la línea de comandos.`,
  UPLOAD_TOO_MANY_FILES: (d) => `La subida tiene más de ${written(d['most'])} archivos. Mande solo los de importación.`,
  UPLOAD_BROKEN_OFF: () => 'La subida se cortó. No se guardó nada: mándela otra vez.',
  IMPORT_NOTHING_REJECTED: (d) => `No se rechazó ninguna fila de ${written(d['file'])}.`,
};

/** Addresses, each with the state of its mail. */
const mailsInSpanish = (mails: unknown): string => written(mails).replace(/\((\w+)\)/g, (_, state: string) => `(${stateInSpanish(state)})`);
