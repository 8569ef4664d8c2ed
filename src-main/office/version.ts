import packageFacts from '../../package.json' with { type: 'json' };

export const VERSION: string = packageFacts.version;
