import { Unzip, UnzipInflate, Zip, ZipDeflate } from 'fflate';
import { FileRefused } from './table-file.js';

/** The same for every file, so that the same content gives the same bytes. */
const FILE_TIME = '1980-01-01T12:00:00';
const CHUNK_BYTES = 64 * 1024;

/** A zip that is written a part at a time. */
export interface ZipWriter {
  /** Begins the next file. @returns adds to it; the file ends where the next one begins */
  readonly begin: (name: string) => (content: Uint8Array | string) => void;
  /** Ends the zip. */
  readonly end: () => Uint8Array;
}

/** Writes a zip: what was added is packed at once, so that a table need not be in memory whole. */
export function zipWriter(): ZipWriter {
  const chunks: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error !== null) throw error;
    chunks.push(chunk);
  });
  let open: ZipDeflate | null = null;
  const endFile = (): void => {
    open?.push(new Uint8Array(), true);
    open = null;
  };
  return {
    begin: (name) => {
      endFile();
      const file = new ZipDeflate(name, { level: 6 });
      file.mtime = FILE_TIME;
      zip.add(file);
      open = file;
      return (content) => file.push(typeof content === 'string' ? Buffer.from(content) : content);
    },
    end: () => {
      endFile();
      zip.end();
      return Buffer.concat(chunks);
    },
  };
}

/** What a zip may be at most. */
export interface ZipLimits {
  readonly fileBytes: number;
  /** Of all files in it together. */
  readonly unpackedBytes: number;
  readonly files: number;
}

/**
 * Unpacks a zip within limits: it stops where more comes out of it than may.
 *
 * @returns each file by its name
 * @throws FileRefused in words when it is no zip, is cut off, or is larger than the limits
 */
export function readZip(bytes: Uint8Array, limits: ZipLimits): ReadonlyMap<string, Uint8Array> {
  if (bytes.length > limits.fileBytes) throw tooLarge(limits.fileBytes);
  const files = new Map<string, Uint8Array>();
  let [begun, ended, unpacked] = [0, 0, 0];
  const unzip = new Unzip((file) => {
    begun += 1;
    if (begun > limits.files) throw new FileRefused('there are too many files in it');
    const chunks: Uint8Array[] = [];
    file.ondata = (error, chunk, isLast) => {
      if (error !== null) throw error;
      unpacked += chunk.length;
      if (unpacked > limits.unpackedBytes) throw tooLarge(limits.unpackedBytes);
      chunks.push(chunk);
      if (!isLast) return;
      ended += 1;
      if (files.has(file.name)) throw new FileRefused(`${file.name} is in it twice`);
      files.set(file.name, Buffer.concat(chunks));
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  try {
    for (let start = 0; start < bytes.length; start += CHUNK_BYTES) {
      const end = Math.min(start + CHUNK_BYTES, bytes.length);
      unzip.push(bytes.subarray(start, end), end === bytes.length);
    }
  } catch (error) {
    // What is wrong with the inside of a zip its reader finds in words of its own.
    throw error instanceof FileRefused ? error : new FileRefused('it is no zip that can be read');
  }
  if (begun === 0) throw new FileRefused('it is no zip that can be read');
  if (ended < begun) throw new FileRefused('it is cut off');
  return files;
}

function tooLarge(bytes: number): FileRefused {
  return new FileRefused(`it is larger than ${bytes / 1024 / 1024} MB`);
}
