// The part of pngjs that the tests use; the package brings no types.
declare module 'pngjs' {
  export class PNG {
    readonly width: number;
    readonly height: number;
    /** Four bytes for each pixel: red, green, blue, opacity. */
    readonly data: Buffer;
    constructor(options: { readonly width: number; readonly height: number });
    static readonly sync: { read(file: Buffer): PNG; write(picture: PNG): Buffer };
  }
}
