import { encode } from 'uqr';

/** A QR code as a picture: an uncompressed 24-bit Windows bitmap, rows from the bottom. */
export function picture(text: string, scale = 6): Buffer {
  const { data, size } = encode(text, { border: 4 });
  const side = size * scale;
  const row = Math.ceil((side * 3) / 4) * 4;
  const file = Buffer.alloc(54 + row * side, 255);
  file.write('BM');
  file.fill(0, 2, 54);
  file.writeUInt32LE(file.length, 2);
  file.writeUInt32LE(54, 10);
  file.writeUInt32LE(40, 14);
  file.writeInt32LE(side, 18);
  file.writeInt32LE(side, 22);
  file.writeUInt16LE(1, 26);
  file.writeUInt16LE(24, 28);
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++)
      if (data[Math.floor(y / scale)]?.[Math.floor(x / scale)])
        file.fill(0, 54 + (side - 1 - y) * row + 3 * x, 54 + (side - 1 - y) * row + 3 * x + 3);
  return file;
}
