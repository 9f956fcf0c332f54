/** Text as it may stand in XML: the five signs escaped, what XML 1.0 forbids left out. @source sources.md#xml-1-0 */
export const escapeXml = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
    .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&apos;');

/** A name as an XML id: letters, digits, dash, dot and underscore, beginning with a letter. */
export const xmlId = (name: string): string =>
  name.replace(/[^A-Za-z0-9._-]/g, '_').replace(/^(?=[^A-Za-z])/, 'n');
