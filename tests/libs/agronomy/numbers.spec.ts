import { holdNumbers } from '../numbers.js';

holdNumbers('agronomy', 80);
