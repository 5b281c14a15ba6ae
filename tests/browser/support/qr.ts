// The QR decoder of @zxing/library: not the library that draws our codes.
import type { Locator } from '@playwright/test';
import {
  BinaryBitmap,
  DecodeHintType,
  HybridBinarizer,
  QRCodeReader,
  RGBLuminanceSource,
} from '@zxing/library';

/** Wide enough that a module, at any fraction of a pixel on the screen, is many samples wide. */
const WIDTH = 1200;

/** Photographs an element as a camera would see it, and reads the QR code in the picture. */
export async function readQr(element: Locator): Promise<string> {
  const png = (await element.screenshot({ scale: 'device' })).toString('base64');
  // The browser decodes its own PNG; the decoder gets the grey values only.
  const { width, height, grey } = await element.evaluate(
    async (_, [picture, width]) => {
      const image = new Image();
      image.src = `data:image/png;base64,${picture}`;
      await image.decode();
      const height = Math.round((image.height / image.width) * width);
      const canvas = new OffscreenCanvas(width, height);
      const context = canvas.getContext('2d');
      if (!context) throw new Error('no canvas');
      context.drawImage(image, 0, 0, width, height);
      const { data } = context.getImageData(0, 0, width, height);
      const greens = data.filter((_value, index) => index % 4 === 1);
      return { width, height, grey: [...greens] };
    },
    [png, WIDTH] as const,
  );
  const source = new RGBLuminanceSource(Uint8ClampedArray.from(grey), width, height);
  const bitmap = new BinaryBitmap(new HybridBinarizer(source));
  return new QRCodeReader().decode(bitmap, new Map([[DecodeHintType.TRY_HARDER, true]])).getText();
}
