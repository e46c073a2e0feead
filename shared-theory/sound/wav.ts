const HEADER_BYTES = 44;

/**
 * A mono 16-bit RIFF/WAVE file of samples −1 to 1 (Microsoft and IBM, "Multimedia Programming Interface and Data
 * Specifications 1.0", 1991). Samples outside are held at the ends.
 */
export function writeWav(samples: Float32Array, sampleRate: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(HEADER_BYTES + samples.length * 2);
  const view = new DataView(bytes.buffer);
  const text = (at: number, word: string) => {
    for (let i = 0; i < word.length; i++) view.setUint8(at + i, word.charCodeAt(i));
  };
  text(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  text(8, 'WAVE');
  text(12, 'fmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true); // integer samples
  view.setUint16(22, 1, true); // one channel
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, sampleRate * 2, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, samples.length * 2, true);
  for (let n = 0; n < samples.length; n++) {
    const held = Math.max(-1, Math.min(1, samples[n] ?? 0));
    view.setInt16(HEADER_BYTES + n * 2, Math.round(held * 32767), true);
  }
  return bytes;
}
