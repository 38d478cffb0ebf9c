export const libraryTexts: Readonly<Record<string, string>> = {};
