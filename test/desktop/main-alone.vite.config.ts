import config from '../../electron.vite.config.ts';

/** The shell as it is built, without the window, which takes most of the time. */
export default { main: config.main, preload: config.preload };
