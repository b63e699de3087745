// What we use of the package text-readability, which brings no types.
declare module 'text-readability' {
  const readability: {
    /** Flesch–Kincaid grade of a text. */
    fleschKincaidGrade(text: string): number;
  };
  export default readability;
}
