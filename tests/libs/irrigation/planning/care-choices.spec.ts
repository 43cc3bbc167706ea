import { careChoices } from '@rillbook/irrigation/planning/demand/care-choices.js';
import { describe, expect, it } from 'vitest';

// Plant factors 0.8, 0.5 and 0.2 are the middles of the high, moderate and low categories that landscape ordinances use.
const [high, moderate, low] = [0.8, 0.5, 0.2];

describe('choices of care', () => {
  it('scale the need by the factors of the thirstiest, of the mean of the cover, and of the modest', () => {
    const plants = [
      { cover: 20, plantFactor: high },
      { cover: 30, plantFactor: moderate },
      { cover: 50, plantFactor: low },
    ];
    expect(careChoices(plants, 1000, 0.5)).toEqual([
      { choice: 'thirstiest', plantFactor: 0.8, litresPerDay: 1600 },
      { choice: 'middle', plantFactor: expect.closeTo(0.41, 12), litresPerDay: expect.closeTo(820, 9) },
      { choice: 'modest', plantFactor: 0.2, litresPerDay: 400 },
    ]);
  });

  it('are none where plants fit together, where fewer than two are known, and where nothing covers', () => {
    expect(
      careChoices(
        [
          { cover: 1, plantFactor: 0.5 },
          { cover: 1, plantFactor: 0.45 },
        ],
        1000,
        0.5,
      ),
    ).toBeNull();
    expect(careChoices([{ cover: 1, plantFactor: high }], 1000, 0.8)).toBeNull();
    expect(
      careChoices(
        [
          { cover: 1, plantFactor: high },
          { cover: 0, plantFactor: low },
        ],
        1000,
        0.8,
      ),
    ).toBeNull();
    expect(
      careChoices(
        [
          { cover: 1, plantFactor: high },
          { cover: 1, plantFactor: low },
        ],
        1000,
        0,
      ),
    ).toBeNull();
  });
});
