import { fieldInSpanish } from './spanish-fields.js';
import { thingInSpanish } from './spanish-words.js';

/** Rules of the database that say more than their ending does, by their names. */
const NAMED: Readonly<Record<string, string>> = {
  person_email_lower: 'Esto no es un correo electrónico.',
  organization_confidence_is_share: 'La confianza mínima de un hallazgo debe estar entre 0.5 y 0.999.',
  zone_controller_and_station_together: 'Una zona tiene controlador y estación, o ninguno de los dos.',
  zone_one_meter_or_none: 'Una zona está en un medidor o sin medidor, no las dos cosas.',
  zone_station_once: 'Otra zona tiene esta estación del controlador. Dele otra estación a una de las dos.',
  usage_day_arrays_agree: 'Cada intervalo de un día necesita comienzo, duración y volumen.',
  month_plan_month_begins_one: 'El plan de un mes se guarda por su primer día.',
  month_account_month_begins_one: 'Un mes se guarda por su primer día.',
  reading_one_at_a_time: 'Ya hay una lectura de este medidor a esta hora. Corrija esa, o cambie la hora.',
  work_order_one_open_per_finding: 'Ya hay una orden de trabajo de esta clase, sin terminar, para el hallazgo. Cambie esa.',
  finding_one_per_cause: 'Ya hay un hallazgo por esta causa.',
  plan_setting_water_from_clock: 'El riego empieza a una hora como 22:00.',
  plan_setting_water_until_clock: 'El riego termina a una hora como 06:00.',
  plan_setting_hours: 'El riego empieza y termina a horas distintas.',
  plan_setting_order: 'La sed pesa al menos tanto como el desperdicio, el desperdicio más que nada, y nada pesa menos de cero.',
  zone_test_is_whole:
    'La prueba de una zona necesita lo que se leyó: dos lecturas y los minutos entre ellas, o lo que recogieron las latas.',
  photo_arrives_whole: 'Una foto tiene todo lo de su imagen, o nada mientras la imagen sigue en un teléfono.',
  photo_place_whole: 'El lugar de una foto tiene latitud y longitud, o ninguna de las dos.',
  work_order_words_known: 'De quién son las palabras de una orden no es una de las palabras conocidas.',
  member_once: 'Esta persona ya es integrante.',
  organization_name_once: 'Ya hay una organización con este nombre. Elija otro.',
  person_email_once: 'Ya hay una persona con este correo electrónico.',
};

/** What the ending of a rule's name says of the value before it. */
const ENDINGS: readonly (readonly [ending: string, says: (subject: string, thing: string) => string])[] = [
  ['_name_given', (_, thing) => `Falta un nombre: ${thing}.`],
  ['_given', (subject) => `Falta un valor: ${subject}.`],
  ['_known', (subject) => `No es una de las palabras conocidas: ${subject}.`],
  ['_not_negative', (subject) => `No puede ser menor que cero: ${subject}.`],
  ['_positive', (subject) => `Debe ser mayor que cero: ${subject}.`],
  ['_is_share', (subject) => `Debe estar entre 0 y 1: ${subject}.`],
  ['_is_percent', (subject) => `Debe estar entre 0 y 100 por ciento: ${subject}.`],
  ['_on_earth', (subject) => `No está en la Tierra: ${subject}. La latitud va de -90 a 90 y la longitud de -180 a 180.`],
  ['_possible', (subject) => `No es un valor posible: ${subject}.`],
  ['_has_twelve', (subject) => `Se necesitan doce valores, uno por mes: ${subject}.`],
  ['_ends_after_start', (_, thing) => `El fin debe ser posterior al comienzo: ${thing}.`],
  ['_closes_after_arrival', (_, thing) => `El cierre debe ser posterior a la llegada: ${thing}.`],
  ['_goes_with_role', (_, thing) => `Solo con la función de cliente se nombra a un cliente, y entonces siempre: ${thing}.`],
  ['_not_null', (subject) => `Falta un valor: ${subject}.`],
  ['_device_record_once', (_, thing) => `Este aparato ya mandó otro contenido con el mismo identificador: ${thing}.`],
  ['_pkey', (_, thing) => `Ya existe uno con este identificador: ${thing}. Cargue la página de nuevo.`],
  ['_key', (_, thing) => `Ya existe uno con este identificador: ${thing}. Cargue la página de nuevo.`],
  ['name_once', (_, thing) => `Ya existe uno con este nombre: ${thing}. Elija otro nombre, o cambie el que está.`],
  ['_once', (_, thing) => `Ya existe uno igual: ${thing}. Cambie el que está.`],
];

const OTHERWISE = 'Un valor falta, ya existe o no es posible. Revise lo escrito y pruebe otra vez.';

const camel = (name: string): string => name.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());

/** The longest beginning of a rule's name that names a thing. */
function thingOf(rule: string): { readonly thing: string; readonly rest: string } {
  const words = rule.split('_');
  for (let count = words.length; count > 0; count -= 1) {
    const name = words.slice(0, count).join(' ');
    const thing = thingInSpanish(name);
    if (thing !== name) return { thing, rest: rule.slice(name.length) };
  }
  return { thing: words[0] ?? '', rest: rule.slice(words[0]?.length ?? 0) };
}

/** What a rule of the database says, in Spanish, by the rule's name. */
export function ruleInSpanish(rule: string): string {
  if (Object.hasOwn(NAMED, rule)) return NAMED[rule]!;
  const { thing, rest } = thingOf(rule);
  const [ending, says] = ENDINGS.find(([end]) => rest.endsWith(end)) ?? [];
  if (!ending || !says) return OTHERWISE;
  const value = camel(rest.slice(1, -ending.length));
  return says(value ? `${thing}, ${fieldInSpanish(value)}` : thing, thing);
}

/** What is said of a pointer that leads nowhere, or that still leads to what was to go. */
export const pointerInSpanish = (rule: string): string =>
  `Lo que aquí se nombra no está, o todavía se necesita (${thingOf(rule).thing}). Cargue la página de nuevo.`;
