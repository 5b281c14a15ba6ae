/** QR codes out of pictures: the platform's detector where there is one, else a library on demand. */

/** What holds a picture: a video frame or a drawn photo. */
type Source = HTMLVideoElement | ImageBitmap;

/** The text of the QR code in a picture, undefined where none is seen. */
export type Decode = (source: Source) => Promise<string | undefined>;

/** Not yet in TypeScript's DOM; see the W3C's Accelerated Shape Detection in Images. */
interface Detector {
  detect(source: Source): Promise<readonly { readonly rawValue: string }[]>;
}
interface DetectorClass {
  new (options: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<readonly string[]>;
}

/** More makes phones' photos slow without finding more. */
const LONGEST_SIDE = 1200;

async function platformDecode(): Promise<Decode | undefined> {
  const { BarcodeDetector } = globalThis as { BarcodeDetector?: DetectorClass };
  // Some browsers have the class and no format.
  const formats = (await BarcodeDetector?.getSupportedFormats().catch(() => [])) ?? [];
  if (!BarcodeDetector || !formats.includes('qr_code')) return undefined;
  const detector = new BarcodeDetector({ formats: ['qr_code'] });
  return async (source) => (await detector.detect(source))[0]?.rawValue;
}

function sizeOf(source: Source): [width: number, height: number] {
  return source instanceof HTMLVideoElement
    ? [source.videoWidth, source.videoHeight]
    : [source.width, source.height];
}

function pixelsOf(source: Source): ImageData | undefined {
  const [width, height] = sizeOf(source);
  const scale = Math.min(1, LONGEST_SIDE / Math.max(width, height, 1));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context || canvas.width === 0 || canvas.height === 0) return undefined;
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(source, 0, 0, canvas.width, canvas.height);
  return context.getImageData(0, 0, canvas.width, canvas.height);
}

async function libraryDecode(): Promise<Decode> {
  const { BinaryBitmap, DecodeHintType, HybridBinarizer, QRCodeReader, RGBLuminanceSource } =
    await import('./zxing.ts');
  const hints = new Map([[DecodeHintType.TRY_HARDER, true]]);
  return (source) => {
    const pixels = pixelsOf(source);
    if (!pixels) return Promise.resolve(undefined);
    const { data, width, height } = pixels;
    const grey = new Uint8ClampedArray(width * height);
    for (let index = 0; index < grey.length; index++) {
      const [red = 0, green = 0, blue = 0] = data.subarray(4 * index, 4 * index + 3);
      grey[index] = (red + 2 * green + blue) / 4;
    }
    const bitmap = new BinaryBitmap(
      new HybridBinarizer(new RGBLuminanceSource(grey, width, height)),
    );
    try {
      return Promise.resolve(new QRCodeReader().decode(bitmap, hints).getText());
    } catch {
      // The library throws where it sees no code.
      return Promise.resolve(undefined);
    }
  };
}

/** The best decoder there is; rejects where the library cannot be loaded. */
export async function makeDecode(): Promise<Decode> {
  return (await platformDecode()) ?? libraryDecode();
}
