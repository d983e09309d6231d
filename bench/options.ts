/** Ends a bench whose options make no sense, as the command line refuses: in JSON, with exit 2. */
export const refuse = (message: string, remedy: string): never => {
  process.stdout.write(`${JSON.stringify({ error: { code: 'bad-option', message, remedy } })}\n`);
  process.exit(2);
};

/** The whole number of an option, 1 or more; anything else ends the bench. */
export const wholeNumber = (text: string, name: string): number => {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1) {
    refuse(`--${name} is ${text}.`, 'Give a whole number, 1 or more.');
  }
  return value;
};
