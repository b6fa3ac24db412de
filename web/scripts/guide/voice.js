// Speaks a prompt with the browser's own voice, if it has one and it was asked for. That it was is
// remembered, where the browser remembers anything.

import { recall, remember } from '../common/chosen.js';
import { language } from '../common/words.js';

const CHOICE = 'sweepsheet-voice';

export const hasVoice = 'speechSynthesis' in globalThis;

export function isVoiceWanted() {
  return recall(CHOICE) === 'on';
}

/** @param {boolean} isWanted */
export function rememberVoice(isWanted) {
  remember(CHOICE, isWanted ? 'on' : 'off');
}

/** A voice of this language, one on the phone itself before one that needs a signal. */
function voice() {
  const ours = speechSynthesis.getVoices().filter(({ lang }) => lang.slice(0, 2).toLowerCase() === language);
  return ours.find(({ localService }) => localService) ?? ours[0] ?? null;
}

/** @param {string} text */
export function speak(text) {
  hush();
  const said = new SpeechSynthesisUtterance(text);
  said.lang = language;
  said.voice = voice();
  speechSynthesis.speak(said);
}

export function hush() {
  if (hasVoice) speechSynthesis.cancel();
}
