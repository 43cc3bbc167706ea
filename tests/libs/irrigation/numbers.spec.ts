import { holdNumbers } from '../numbers.js';

holdNumbers('irrigation', 38);
