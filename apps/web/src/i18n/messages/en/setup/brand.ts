/** The words of the page where the reports' dress is kept. */
export const brand = {
  'setup.nav.brand': 'Reports',
  'setup.brand.title': 'How your water reports look',
  'setup.brand.lede':
    'Your own name, colour and logo stand at the head of every report, as PDF, as a page and in the mail. What was approved or sent stays as it was.',
  'setup.brand.name': 'Name on the report',
  'setup.brand.name.hint': 'Left empty, it is {name}.',
  'setup.brand.contact': 'Where clients reach you',
  'setup.brand.contact.hint': 'One line: address, telephone or e-mail.',
  'setup.brand.colour': 'Colour of lines and name',
  'setup.brand.colour.hint': 'Dark enough to be read on white paper.',
  'setup.brand.colour.own': 'Use the report’s own colour',
  'setup.brand.pale': 'This colour is too pale to be read on white paper. Choose a darker one.',
  'setup.brand.logo': 'Logo',
  'setup.brand.logo.hint': 'A PNG or JPEG of at most 300 kB.',
  'setup.brand.logo.wrong': '{name} is no PNG or JPEG of at most 300 kB. Choose another file, or make it smaller.',
  'setup.brand.logo.away': 'Take the logo away',
  'setup.brand.head': 'The head of a report will be:',
  'setup.brand.example': 'Water report · for your client',
};
