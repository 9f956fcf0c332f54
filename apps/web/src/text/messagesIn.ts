import type { Language, Messages } from '../contract.ts';

/** Sentences of a language, fetched when first asked for; none for English. Workers ask for their own. */
export async function messagesIn(language: Language): Promise<Messages | undefined> {
  switch (language) {
    case 'de':
      return (await import('./german/messages.ts')).messages;
    case 'es':
      return (await import('./spanish/messages.ts')).messages;
    case 'en':
      return undefined;
  }
}
