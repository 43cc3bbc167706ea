import { problem } from '../problems/problem.js';

/** Faults of kept files. */
export const filesProblems = {
  /** The bytes are none of the kinds of picture that are taken. */
  notAPicture: problem(
    'NOT_A_PICTURE',
    415,
    (d: { found: string }) =>
      `This is not a picture that can be kept: found ${d.found}, expected JPEG, PNG or WebP. Save it as JPEG and send it again.`,
  ),
  /** More bytes than are taken for one picture. */
  pictureTooLarge: problem('PICTURE_TOO_LARGE', 413, (d: { most: string }) => `The picture is larger than ${d.most}. Send a smaller one.`),
  /** More points than are unpacked. */
  pictureTooWide: problem('PICTURE_TOO_WIDE', 422, (d: { most: string }) => `The picture has more than ${d.most}. Send a smaller one.`),
  /** The picture begins well and cannot be read to its end. */
  pictureBroken: problem(
    'PICTURE_BROKEN',
    422,
    () => 'The picture is broken: it cannot be read to its end. Take it again, or send another one.',
  ),
};
