import { BODY_TEMPERATURE_C } from '../../../lib/care/answers';

/** What a person typed as a temperature, and what it can be. */
export type TypedTemperature =
  | { readonly kind: 'empty' }
  | { readonly kind: 'celsius'; readonly celsius: number }
  /** No body is that hot in Celsius, but one is in Fahrenheit: they are asked. */
  | { readonly kind: 'fahrenheit'; readonly celsius: number }
  | { readonly kind: 'outside' };

const isBody = (celsius: number) => celsius >= BODY_TEMPERATURE_C.least && celsius <= BODY_TEMPERATURE_C.greatest;
const tenth = (value: number) => Math.round(value * 10) / 10;

/** Reads `38,5`, `38.5 °C` and `101`; `readTemperature('100.4')` is `{ kind: 'fahrenheit', celsius: 38 }`. */
export function readTemperature(typed: string): TypedTemperature {
  const text = typed.replace(',', '.').replace(/[°\sCF]/gi, '');
  if (text === '') return { kind: 'empty' };
  const degrees = Number(text);
  if (!Number.isFinite(degrees)) return { kind: 'outside' };
  if (isBody(degrees)) return { kind: 'celsius', celsius: tenth(degrees) };
  const celsius = tenth(((degrees - 32) * 5) / 9);
  return isBody(celsius) ? { kind: 'fahrenheit', celsius } : { kind: 'outside' };
}
