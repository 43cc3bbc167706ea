import { holdNumbers } from '../numbers.js';

holdNumbers('metering', 30);
