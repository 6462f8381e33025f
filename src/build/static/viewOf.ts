/** Of exactly these bytes, wherever in their buffer they lie. */
export const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
