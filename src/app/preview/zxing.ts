/** The parts of the library that read QR codes, in a file of their own: loaded on demand. */
export { default as BinaryBitmap } from '@zxing/library/esm/core/BinaryBitmap.js';
export { default as DecodeHintType } from '@zxing/library/esm/core/DecodeHintType.js';
export { default as RGBLuminanceSource } from '@zxing/library/esm/core/RGBLuminanceSource.js';
export { default as HybridBinarizer } from '@zxing/library/esm/core/common/HybridBinarizer.js';
export { default as QRCodeReader } from '@zxing/library/esm/core/qrcode/QRCodeReader.js';
