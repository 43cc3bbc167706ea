// Larkspur Grounds and the valley it works in: clients, stations, suppliers. The properties stand in the files beside this one.
import { associations } from './larkspur-associations.mjs';
import { courts } from './larkspur-courts.mjs';
import { gardens } from './larkspur-gardens.mjs';
import { offices } from './larkspur-offices.mjs';
import { publicPlaces } from './larkspur-public.mjs';
import { schools } from './larkspur-schools.mjs';
import { shops } from './larkspur-shops.mjs';
import { terraces } from './larkspur-terraces.mjs';

const EXEMPT = 'drip, subsurface drip, bubbler, microspray, hand';
const TURF = 'turf cool-season, turf warm-season';

const fennelHollowWater = {
  name: 'Fennel Hollow Water',
  billUnit: 'CCF',
  rules: [
    {
      name: 'No overhead watering by day',
      blocked_from: '10:00',
      blocked_until: '20:00',
      exempt_methods: EXEMPT,
      water: 'potable',
      effective_from: '2025-05-01',
    },
    {
      name: 'Five days a week in summer',
      days_per_week: 5,
      exempt_methods: EXEMPT,
      water: 'potable',
      effective_from: '2026-06-01',
      effective_until: '2026-10-31',
    },
    { name: 'Not after rain', hours_after_rain: 24, rain_in: '0.25', exempt_methods: 'hand', effective_from: '2025-05-01' },
    {
      name: 'Recycled water at night only',
      blocked_from: '06:00',
      blocked_until: '21:00',
      water: 'recycled',
      effective_from: '2025-05-01',
    },
  ],
  rates: [
    { from: '2025-07-01', fixed: 42, shares: true, tiers: [{ upTo: 1, price: 3.86 }, { upTo: 1.5, price: 4.65 }, { price: 6.2 }] },
    { from: '2026-07-01', fixed: 44.5, shares: true, tiers: [{ upTo: 1, price: 4.12 }, { upTo: 1.5, price: 4.98 }, { price: 6.65 }] },
  ],
};

const piedraCreek = {
  name: 'Piedra Creek Irrigation District',
  billUnit: 'CCF',
  rules: [
    { name: 'Odd addresses', allowed_days: 'Mon Wed Fri', address_parity: 'odd', exempt_methods: EXEMPT, effective_from: '2025-05-01' },
    { name: 'Even addresses', allowed_days: 'Tue Thu Sat', address_parity: 'even', exempt_methods: EXEMPT, effective_from: '2025-05-01' },
    {
      name: 'Night and early morning',
      blocked_from: '09:00',
      blocked_until: '19:00',
      exempt_methods: EXEMPT,
      effective_from: '2025-05-01',
    },
    {
      name: 'Forty minutes a spray station',
      max_minutes: 40,
      plants: TURF,
      exempt_methods: `${EXEMPT}, rotor, rotary nozzle`,
      effective_from: '2025-05-01',
    },
    { name: 'No drinking water on decorative lawns', allowed_days: 'none', plants: TURF, water: 'potable', effective_from: '2028-01-01' },
  ],
  rates: [
    { from: '2025-07-01', fixed: 28.5, tiers: [{ upTo: 40, price: 3.1 }, { upTo: 120, price: 3.95 }, { price: 4.8 }] },
    { from: '2026-07-01', fixed: 30.25, tiers: [{ upTo: 40, price: 3.3 }, { upTo: 120, price: 4.2 }, { price: 5.15 }] },
  ],
};

const client = (name, emails, notToExceed, more = {}) => ({ name, emails: emails.join(' '), notToExceed, ...more });

export const larkspurGrounds = {
  folder: 'larkspur-grounds',
  valley: 'Fennel Hollow',
  city: 'Fennel Hollow',
  stations: [
    {
      name: 'Fennel Hollow East',
      latitude: 38.071,
      longitude: -120.958,
      elevationFt: 236,
      warmer: 0,
      wetter: 1,
      windier: 1,
      sensors: 'all',
      rainLost: ['2025-10-08', '2026-04-23'],
    },
    {
      name: 'Piedra Bench',
      latitude: 38.128,
      longitude: -120.921,
      elevationFt: 372,
      warmer: -0.6,
      wetter: 1.12,
      windier: 1.04,
      sensors: 'plain',
      rainLost: ['2025-09-17'],
    },
  ],
  suppliers: [fennelHollowWater, piedraCreek],
  clients: [
    client('Quail Commons HOA', ['board@quail-commons.example.test', 'treasurer@quail-commons.example.test'], 900),
    client('Fennel Hollow Schools', ['grounds@fennel-hollow-schools.example.test'], 1500),
    client('Old Mill Retail', [], 600),
    client('Saltbush Owners', ['manager@saltbush-owners.example.test'], 1200),
    client('Tamarack Row Townhomes', ['office@tamarack-row.example.test'], 500),
    client('Hollow Creek Retirement', ['facilities@hollow-creek.example.test'], 800),
    client('Town of Fennel Hollow', ['parks@town-of-fennel-hollow.example.test', 'library@town-of-fennel-hollow.example.test'], 2000),
    client('Juniper Court', ['owner@juniper-court.example.test'], 400),
    client('Bramble Ridge Apartments', ['manager@bramble-ridge.example.test'], 450),
    client('Ironbark', ['leasing@ironbark.example.test'], 400),
    client('Willow Bend', ['practice@willow-bend.example.test'], 350),
    client('Alder Row Duplexes', ['owners@alder-row.example.test'], 250),
    client('Cutbank Trail HOA', ['board@cutbank-trail.example.test'], 500),
    client('Larch Terrace HOA', ['board@larch-terrace.example.test'], 500),
    client('Pepperwood Tenants', ['tenants@pepperwood.example.test'], 200),
    client('Mallow Court Owners', ['owners@mallow-court.example.test'], 300),
    client('Orchard Gate HOA', ['board@orchard-gate.example.test'], 500),
    client('Fennel Hollow Chapel', ['warden@fennel-hollow-chapel.example.test'], 250),
    client('Familia Arroyo Luján', ['arroyo.lujan@casa.example.test'], 150, { language: 'es' }),
    client('Kestrel House Trust', ['trustees@kestrel-house.example.test'], 300, { units: 'metric' }),
    client('Heron Flats', ['manager@heron-flats.example.test'], 700),
    client('Millrace Lofts', ['lofts@millrace.example.test'], 300),
    client('Thistle Field Shops', ['manager@thistle-field.example.test'], 400),
    client('Dovecote Gardens Society', ['society@dovecote-gardens.example.test'], 200),
    client('Sorrel Bank Household', ['home@sorrel-bank.example.test'], 150),
    client('Larkrise Court Owners', ['owners@larkrise-court.example.test'], 250),
  ],
  properties: [...associations, ...terraces, ...schools, ...publicPlaces, ...shops, ...offices, ...courts, ...gardens],
};
