// The QR decoder of @zxing/library: not the library that draws our codes.
import type { Locator } from '@playwright/test';
import { BinaryBitmap, HybridBinarizer, QRCodeReader, RGBLuminanceSource } from '@zxing/library';

/** Photographs an element as a camera would see it, and reads the QR code in the picture. */
export async function readQr(element: Locator): Promise<string> {
  const png = (await element.screenshot({ scale: 'css' })).toString('base64');
  // The browser decodes its own PNG; the decoder gets the grey values only.
  const { width, height, grey } = await element.evaluate(async (_, picture) => {
    const image = new Image();
    image.src = `data:image/png;base64,${picture}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext('2d');
    if (!context) throw new Error('no canvas');
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    const greens = data.filter((_value, index) => index % 4 === 1);
    return { width: image.width, height: image.height, grey: [...greens] };
  }, png);
  const source = new RGBLuminanceSource(Uint8ClampedArray.from(grey), width, height);
  return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source))).getText();
}
