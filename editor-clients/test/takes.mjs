// Recordings for the drivers: WAV files (RIFF/WAVE, PCM and IEEE float) written and read by hand, apart from the program.
import { closeSync, openSync, readFileSync, writeSync } from 'node:fs';

const RATE = 48_000;

/** Writes a 440 Hz sine of −20 dBFS, one channel of 16-bit integers, `seconds` long. */
export function tone(path, seconds) {
  const header = Buffer.alloc(44);
  const bytes = seconds * RATE * 2;
  header.write('RIFF', 0);
  header.writeUInt32LE(36 + bytes, 4);
  header.write('WAVEfmt ', 8);
  header.writeUInt32LE(16, 16);
  header.writeUInt16LE(1, 20);
  header.writeUInt16LE(1, 22);
  header.writeUInt32LE(RATE, 24);
  header.writeUInt32LE(RATE * 2, 28);
  header.writeUInt16LE(2, 32);
  header.writeUInt16LE(16, 34);
  header.write('data', 36);
  header.writeUInt32LE(bytes, 40);
  // A second holds whole periods, so that one can be written again and again.
  const second = Buffer.alloc(RATE * 2);
  for (let i = 0; i < RATE; i++) {
    second.writeInt16LE(Math.round(3276.7 * Math.sin((2 * Math.PI * 440 * i) / RATE)), 2 * i);
  }
  const file = openSync(path, 'w');
  writeSync(file, header);
  for (let i = 0; i < seconds; i++) {
    writeSync(file, second);
  }
  closeSync(file);
}

/** The highest sample of a WAV file of 16-bit integers or 32-bit floats, after its first tenth of a second. */
export function peak(path) {
  const file = readFileSync(path);
  let at = 12;
  let format = 1;
  while (file.toString('latin1', at, at + 4) !== 'data') {
    if (file.toString('latin1', at, at + 4) === 'fmt ') {
      // In the extensible form the first two bytes of the sub-format say what the samples are.
      const tag = file.readUInt16LE(at + 8);
      format = tag === 0xfffe ? file.readUInt16LE(at + 32) : tag;
    }
    at += 8 + file.readUInt32LE(at + 4) + (file.readUInt32LE(at + 4) % 2);
  }
  const end = at + 8 + file.readUInt32LE(at + 4);
  const width = format === 3 ? 4 : 2;
  let highest = 0;
  for (let i = at + 8 + (RATE / 10) * width; i + width <= end; i += width) {
    highest = Math.max(highest, Math.abs(format === 3 ? file.readFloatLE(i) : file.readInt16LE(i) / 32768));
  }
  return highest;
}
