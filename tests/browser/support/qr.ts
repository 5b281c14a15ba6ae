// The QR decoder of @zxing/library: not the library that draws our codes.
import type { Locator } from '@playwright/test';
import {
  BinaryBitmap,
  DecodeHintType,
  GlobalHistogramBinarizer,
  HybridBinarizer,
  QRCodeReader,
  RGBLuminanceSource,
} from '@zxing/library';

/** Widths in pixels: a camera coming nearer. The decoder misses some codes at some of them. */
const WIDTHS = [300, 400, 500, 650, 800, 1000, 350, 450, 575, 725, 900, 1100];
/** As of a photograph, and as of a picture of nothing else, which reads the dense codes it misses. */
const MANNERS = [
  [HybridBinarizer, new Map([[DecodeHintType.TRY_HARDER, true]])],
  [GlobalHistogramBinarizer, new Map([[DecodeHintType.TRY_HARDER, true]])],
  [HybridBinarizer, new Map([[DecodeHintType.PURE_BARCODE, true]])],
  [GlobalHistogramBinarizer, new Map([[DecodeHintType.PURE_BARCODE, true]])],
] as const;

/** The grey values of a picture drawn `width` pixels wide. */
function greyAt(element: Locator, png: string, width: number) {
  // The browser decodes its own PNG; the decoder gets the grey values only.
  return element.evaluate(
    async (_, [picture, width]) => {
      const image = new Image();
      image.src = `data:image/png;base64,${picture}`;
      await image.decode();
      const height = Math.round((image.height / image.width) * width);
      const context = new OffscreenCanvas(width, height).getContext('2d');
      if (!context) throw new Error('no canvas');
      context.drawImage(image, 0, 0, width, height);
      const { data } = context.getImageData(0, 0, width, height);
      return { height, grey: [...data.filter((_value, index) => index % 4 === 1)] };
    },
    [png, width] as const,
  );
}

/** Photographs an element as a camera would see it, and reads the QR code in the picture. */
export async function readQr(element: Locator): Promise<string> {
  const png = (await element.screenshot({ scale: 'device' })).toString('base64');
  let reason: unknown;
  for (const width of WIDTHS) {
    const { height, grey } = await greyAt(element, png, width);
    const source = new RGBLuminanceSource(Uint8ClampedArray.from(grey), width, height);
    for (const [Binarizer, hints] of MANNERS)
      try {
        const bitmap = new BinaryBitmap(new Binarizer(source));
        return new QRCodeReader().decode(bitmap, hints).getText();
      } catch (error) {
        reason = error;
      }
  }
  throw reason;
}
