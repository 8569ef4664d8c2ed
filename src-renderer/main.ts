import '@fontsource/atkinson-hyperlegible-next/latin-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-600.css';
import '@fontsource/atkinson-hyperlegible-next/latin-ext-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-ext-600.css';
import './theme.css';
import { mount } from 'svelte';
import { languageChosen, speak } from '../shared-core/words/index.ts';
import { connectHost } from './host/connect.ts';

const target = document.getElementById('app');
if (!target) throw new Error('the page has no place for the app');
const host = connectHost();
const settings = await host.call('read-settings', {});
const language = languageChosen(settings.ok ? settings.value.settings.language : 'system', navigator.language);
speak(language);
document.documentElement.lang = language.code;
// What says something is loaded only now.
const [{ default: App }, { AppState }] = await Promise.all([import('./App.svelte'), import('./state/app.svelte.ts')]);
mount(App, { target, props: { app: new AppState(host, settings) } });
