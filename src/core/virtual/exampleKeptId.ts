/** Under which id the example workshop's kept setting stands in the book: where a visitor is led. */
export const exampleKeptId = 'example-kept';
