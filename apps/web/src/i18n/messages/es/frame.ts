import type { frame as english } from '../en/frame.js';

export const frame: Record<keyof typeof english, string> = {
  'frame.skip': 'Saltar a la página',
  'frame.pages': 'Páginas',
  'frame.portfolio': 'Cartera',
  'frame.month': 'Mes',
  'frame.findings': 'Hallazgos',
  'frame.reports': 'Informes',
  'frame.routes': 'Rutas',
  'frame.setup': 'Preparación',
  'frame.today': 'Hoy',
  'frame.water': 'Su agua',
  'frame.otherLanguage': 'English',
  'frame.display': 'Pantalla',
  'frame.contrast': 'Alto contraste',
  'frame.large': 'Grande',
  'frame.dark': 'Oscuro',
  'frame.signOut': 'Salir',
  'frame.notFound.title': 'No hay ninguna página en esta dirección',
  'frame.notFound.lede': 'El enlace puede ser viejo, o lo que nombra fue retirado. No se perdió nada.',
  'frame.notFound.back': 'Ir a la primera página',
};
