import type { plans as english } from '../../en/setup/plans.js';

export const plans: Record<keyof typeof english, string> = {
  'setup.plans.title': 'Con qué se planean los programas',
  'setup.plans.note':
    'Cada plan es el más barato con estos precios: la sed cuesta más que el desperdicio y el desperdicio más que mover teclas. Lo que le falta a una zona cuenta doble a partir de un cuarto de lo que necesita, y ocho veces a partir de la mitad.',
  'setup.plans.waterFrom': 'Se puede regar desde las',
  'setup.plans.waterUntil': 'y hay que terminar a las',
  'setup.plans.thirst': 'Precio del agua que les falta a las plantas',
  'setup.plans.thirst.how': 'Junto al precio del agua desperdiciada: 3 y 1 dicen que un galón de menos es tan malo como tres de más.',
  'setup.plans.waste': 'Precio del agua desperdiciada',
  'setup.plans.keyPress': 'Agua que debe ahorrar por lo menos cada tecla',
  'setup.plans.keyPress.how': 'Cambiar un valor en el controlador vale tanta agua desperdiciada al mes.',
  'setup.plans.watering': 'Agua que vale regar una zona una vez menos',
  'setup.plans.watering.how': 'Déjelo chico: solo hace que se riegue hondo y de vez en cuando si todo lo demás es igual.',
  'setup.plans.noTime': 'Ponga una hora.',
  'setup.plans.thirstFirst': 'La sed debe costar por lo menos lo mismo que el desperdicio; si no, los planes dejarían secar las plantas.',
  'setup.plans.save': 'Guardar con qué se planea',
};
