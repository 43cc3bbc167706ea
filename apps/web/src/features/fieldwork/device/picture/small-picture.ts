/** As large as a person needs to see what is wrong with a head; some 0.3 MB. */
const MOST_SIDE = 1600;
const QUALITY = 0.8;

/** The sides of a picture made to fit, its shape kept; a small one stays. */
export function fittedSides(width: number, height: number, most = MOST_SIDE): { readonly width: number; readonly height: number } {
  const share = Math.min(1, most / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * share)), height: Math.max(1, Math.round(height * share)) };
}

/** Makes a picture small on the phone: upright, as JPEG, its points only, so that place and time of the camera stay behind. */
export async function smallPicture(file: Blob): Promise<ArrayBuffer> {
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  try {
    const { width, height } = fittedSides(bitmap.width, bitmap.height);
    const canvas = new OffscreenCanvas(width, height);
    const context = canvas.getContext('2d');
    if (!context) throw new Error('The browser gives no canvas.');
    context.drawImage(bitmap, 0, 0, width, height);
    return await (await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY })).arrayBuffer();
  } finally {
    bitmap.close();
  }
}
