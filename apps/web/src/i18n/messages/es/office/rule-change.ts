import type { ruleChange as english } from '../../en/office/rule-change.js';

export const ruleChange: Record<keyof typeof english, string> = {
  'ruleChange.title': 'Una regla nueva de {supplier}',
  'ruleChange.lede':
    'Escriba la regla, vea qué controladores no la cumplen como están ahora, póngala en vigor y mande a las cuadrillas. Lo permitido lo deciden el reglamento local y el texto del proveedor.',
  'ruleChange.rule': 'La regla',
  'ruleChange.name': 'Nombre de la regla',
  'ruleChange.daysPerWeek': 'Días por semana, a lo más',
  'ruleChange.allowedDays': 'Días permitidos',
  'ruleChange.allowedDays.any': 'Cualquier día',
  'ruleChange.allowedDays.weekdays': 'Días de la semana',
  'ruleChange.allowedDays.odd': 'Días nones del mes',
  'ruleChange.allowedDays.even': 'Días pares del mes',
  'ruleChange.blockedFrom': 'No se riega desde las',
  'ruleChange.blockedUntil': 'No se riega hasta las',
  'ruleChange.effectiveFrom': 'En vigor desde',
  'ruleChange.replaces': 'Reemplaza a',
  'ruleChange.replaces.none': 'Ninguna otra regla',
  'ruleChange.ask': 'Mostrar qué cambia',
  'ruleChange.wrong.name': 'Póngale nombre a la regla: las órdenes de trabajo lo llevan.',
  'ruleChange.wrong.daysPerWeek': 'Los días por semana deben ser un número entero de 0 a 7.',
  'ruleChange.wrong.blocked': 'Las horas prohibidas necesitan principio y fin.',
  'ruleChange.wrong.nothing': 'La regla todavía no prohíbe nada: ponga días por semana, días permitidos u horas prohibidas.',
  'ruleChange.breakers':
    '{count, plural, =0 {Ningún controlador rompe} one {Un controlador rompe} other {# controladores rompen}} entonces una regla, de {all} revisados',
  'ruleChange.seen':
    'De {properties, plural, one {# propiedad} other {# propiedades}} del proveedor, {until} revisadas.{unknown, plural, =0 {} one { De un controlador no se sabe qué tiene puesto, o no se puede planear: véalo en el sitio.} other { De # controladores no se sabe qué tienen puesto, o no se pueden planear: véalos en el sitio.}}',
  'ruleChange.where': 'Controlador',
  'ruleChange.breaks': 'Lo que no cumple',
  'ruleChange.enter': 'Lo que hay que meter',
  'ruleChange.result': 'Qué resulta',
  'ruleChange.outcome': 'faltan {unmet}, se desperdician {wasted}{ends, select, none {} other {, termina a las {ends}}}',
  'ruleChange.goesOn': 'Propiedades revisadas',
  'ruleChange.bringIn': 'Poner la regla en vigor',
  'ruleChange.isIn': '{name} ya está. Ahora se pueden hacer las órdenes de trabajo.',
  'ruleChange.made':
    '{count, plural, =0 {No hizo falta ninguna orden.} one {Se hizo una orden de trabajo.} other {Se hicieron # órdenes de trabajo.}}',
  'ruleChange.toRoutes': 'Verlo en Rutas',
  'ruleChange.nobody': 'Nadie todavía',
  'ruleChange.order': 'Hacer las órdenes de trabajo',
  'ruleChange.open': 'Regla nueva: ¿qué cambiaría?',
};
