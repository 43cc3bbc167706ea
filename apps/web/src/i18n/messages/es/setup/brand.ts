/** The words of the page where the reports' dress is kept. */
export const brand = {
  'setup.nav.brand': 'Informes',
  'setup.brand.title': 'Cómo se ven sus informes de agua',
  'setup.brand.lede':
    'Su nombre, su color y su logotipo van al principio de cada informe, en PDF, como página y en el correo. Lo aprobado o enviado queda como estaba.',
  'setup.brand.name': 'Nombre en el informe',
  'setup.brand.name.hint': 'Si queda vacío, es {name}.',
  'setup.brand.contact': 'Dónde le encuentran los clientes',
  'setup.brand.contact.hint': 'Una línea: dirección, teléfono o correo.',
  'setup.brand.colour': 'Color de las líneas y del nombre',
  'setup.brand.colour.hint': 'Tan oscuro que se lea sobre papel blanco.',
  'setup.brand.colour.own': 'Usar el color propio del informe',
  'setup.brand.pale': 'Este color es demasiado claro para leerse sobre papel blanco. Elija uno más oscuro.',
  'setup.brand.logo': 'Logotipo',
  'setup.brand.logo.hint': 'Un PNG o JPEG de hasta 300 kB.',
  'setup.brand.logo.wrong': '{name} no es un PNG o JPEG de hasta 300 kB. Elija otro archivo o hágalo más pequeño.',
  'setup.brand.logo.away': 'Quitar el logotipo',
  'setup.brand.head': 'El principio de un informe será:',
  'setup.brand.example': 'Informe de agua · para su cliente',
};
