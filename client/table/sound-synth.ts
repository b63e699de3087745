// The sounds of a table, made by the browser out of tones and noise; there are no sound files.

export const SOUNDS = ['tap', 'clack', 'chime'] as const;
export type Sound = (typeof SOUNDS)[number];

let context: AudioContext | null = null;

/** Browsers allow no sound before the first tap; until then nothing is heard and nothing fails. */
function audioContext(): AudioContext {
  context ??= new AudioContext();
  if (context.state === 'suspended') void context.resume();
  return context;
}

export function play(sound: Sound, after = 0): void {
  const audio = audioContext();
  const start = audio.currentTime + after;
  switch (sound) {
    case 'tap':
      burst(audio, start, 1400, 0.12);
      return;
    case 'clack':
      for (const [nth, pitch] of [900, 1050, 980].entries()) burst(audio, start + nth * 0.09, pitch, 0.2);
      return;
    case 'chime':
      tone(audio, start, 523.25);
      tone(audio, start + 0.16, 659.25);
  }
}

/** All sounds, one after the other, to try them out. */
export function playAll(): void {
  for (const [nth, sound] of SOUNDS.entries()) play(sound, nth * 0.7);
}

/** A short burst of noise around one pitch, like bone on wood. Pitch in hertz, loudness 0–1. */
function burst(audio: AudioContext, start: number, pitch: number, loudness: number): void {
  const noise = audio.createBufferSource();
  const length = Math.ceil(audio.sampleRate * 0.05);
  const buffer = audio.createBuffer(1, length, audio.sampleRate);
  const samples = buffer.getChannelData(0);
  for (let at = 0; at < length; at++) samples[at] = (Math.random() * 2 - 1) * (1 - at / length) ** 3;
  noise.buffer = buffer;
  const band = audio.createBiquadFilter();
  band.type = 'bandpass';
  band.frequency.value = pitch;
  band.Q.value = 3;
  noise.connect(band).connect(fading(audio, start, loudness, 0.05));
  noise.start(start);
}

function tone(audio: AudioContext, start: number, pitch: number): void {
  const voice = audio.createOscillator();
  voice.type = 'sine';
  voice.frequency.value = pitch;
  voice.connect(fading(audio, start, 0.08, 0.6));
  voice.start(start);
  voice.stop(start + 0.7);
}

/** Starts at `loudness` and is gone after `seconds`. */
function fading(audio: AudioContext, start: number, loudness: number, seconds: number): AudioNode {
  const gain = audio.createGain();
  gain.gain.setValueAtTime(loudness, start);
  gain.gain.exponentialRampToValueAtTime(0.0001, start + seconds);
  gain.connect(audio.destination);
  return gain;
}
