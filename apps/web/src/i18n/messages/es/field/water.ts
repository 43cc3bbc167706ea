import type { water as english } from '../../en/field/water.js';

/** Las palabras de lo que ve un cliente. */
export const water: Record<keyof typeof english, string> = {
  'yourWater.title':
    '{count, plural, one {Lo que tomó su propiedad, y lo que necesitaban sus plantas} other {Lo que tomaron sus # propiedades, y lo que necesitaban sus plantas}}',
  'yourWater.lede':
    'Necesario es lo que las plantas pedían al riego con el tiempo que hizo de verdad; medido es lo que pasó por el medidor.',
  'yourWater.month': 'Mes',
  'yourWater.through': 'El mes no ha terminado: todos los volúmenes llegan hasta el {day}.',
  'yourWater.empty': 'Todavía no hay ninguna propiedad suya registrada',
  'yourWater.emptyHow': 'Pregunte a la empresa que cuida su jardín. Sus propiedades aparecen aquí en cuanto se registran.',
  'yourWater.noAccount': 'Todavía no hay cuenta de este mes. Llega con las primeras lecturas y el tiempo.',
  'yourWater.notKnown': 'no se sabe',
  'yourWater.months': '{name}, mes por mes',
  'yourWater.says.notMetered': '{name}: no se sabe cuánto tomó{reason, select, none {} other { ({reason})}}',
  'yourWater.says.noNeed': '{name} tomó {metered}; todavía no se sabe qué necesitaban sus plantas',
  'yourWater.says.near': '{name} tomó {metered}, más o menos lo que necesitaban sus plantas',
  'yourWater.says.unsureAbove':
    '{name} tomó {metered}, más que los {needed} que necesitaban sus plantas, pero no por más de lo que estas cifras pueden fallar',
  'yourWater.says.unsureBelow':
    '{name} tomó {metered}, menos que los {needed} que necesitaban sus plantas, pero no por más de lo que estas cifras pueden fallar',
  'yourWater.says.above':
    '{name} tomó {metered}, {gap} más de lo que necesitaban sus plantas{money, select, none {} other {, unos {money}}}',
  'yourWater.says.below': '{name} tomó {metered}, {gap} menos de lo que necesitaban sus plantas',
  'yourWater.reports': '{count, plural, =0 {Todavía sin informes del agua} one {Un informe del agua} other {# informes del agua}}',
  'yourWater.noReports': 'Llega un informe por mes, trimestre o año. Aparece aquí cuando se envía.',
  'yourWater.sent': 'enviado {when}',
  'yourWater.foot': 'Presupuestos y horarios son consejos. Las normas locales y las reglas de su proveedor de agua están por encima.',
  'yourWater.file.pdf': 'El informe del {days} (PDF)',
  'yourWater.file.xlsx': 'Sus cifras (XLSX)',
  'yourWater.file.csv': 'Sus cifras (CSV)',
  'yourWater.questions': '{count, plural, =0 {Pregunte a la oficina} one {Su pregunta} other {Sus # preguntas}}',
  'yourWater.closed': 'La oficina cerró esta pregunta sin respuesta. Pregunte otra vez si todavía quiere saberlo.',
  'yourWater.notAnswered': 'La oficina la tiene; todavía no hay respuesta.',
  'yourWater.about': 'Sobre',
  'yourWater.aboutAll': 'su agua en general',
  'yourWater.ask': 'Su pregunta',
  'yourWater.ask.empty': 'Escriba primero su pregunta.',
  'yourWater.ask.send': 'Enviar la pregunta',
  'yourWater.toApprove':
    '{count, plural, =0 {La oficina le prepara una oferta} one {Una cosa espera su aprobación} other {# cosas esperan su aprobación}}',
  'yourWater.toApprove.line':
    '{where}: {what}{cost, select, none {} other {. Cuesta unos {cost}}}{litres, select, none {} other {. Ahorraría unos {litres} al año{money, select, none {} other {, unos {money}}}}}.',
  'yourWater.upgrade.mixed water needs': 'Dar líneas propias a las plantas con distintas necesidades',
  'yourWater.approve': 'Aprobar',
  'yourWater.approveThis': 'Aprobar: {what}',
  'yourWater.sure.order': 'El trabajo se hará y se cobrará como se dice. ¿Lo aprueba?',
  'yourWater.offer': 'Pedir una oferta',
  'yourWater.offer.this': 'Pedir una oferta: {what}',
  'yourWater.offer.sure':
    'Todavía no se sabe su precio. La oficina le hace una oferta, y no se empieza nada antes de que usted la apruebe. ¿Quiere la oferta?',
  'yourWater.offer.yes': 'Sí, háganme una oferta',
  'yourWater.offer.asked': 'Gracias. La oficina le hará una oferta; no se empieza nada antes de que usted la apruebe.',
  'yourWater.offer.awaited':
    'Se pidió una oferta: la oficina todavía no ha dicho su precio. No se empieza nada antes de que usted la apruebe.',
  'yourWater.yes': 'Sí, lo apruebo',
  'yourWater.notNow': 'Ahora no',
  'yourWater.approved': 'Gracias. La oficina tiene su aprobación.',
};
