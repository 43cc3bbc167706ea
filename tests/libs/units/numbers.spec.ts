import { holdNumbers } from '../numbers.js';

holdNumbers('units', 45);
