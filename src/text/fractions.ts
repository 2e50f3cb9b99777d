/** Signs such as ½ and their figures, by Unicode’s compatibility decomposition. */

const fractionSlash = '\u2044';

/** Above and below the line; `undefined` if the sign is no fraction. */
export function fractionOf(sign: string): readonly [over: string, under: string] | undefined {
  const [, over, under] = new RegExp(`^(\\d+)${fractionSlash}(\\d+)$`).exec(sign.normalize('NFKD')) ?? [];
  return over !== undefined && under !== undefined ? [over, under] : undefined;
}

/** “1½” as “1 1/2”. */
export function withFractionsInFigures(text: string): string {
  return text.replace(/(\d?)(\p{No})/gu, (written, before: string, sign: string) => {
    const fraction = fractionOf(sign);
    return fraction ? `${before}${before === '' ? '' : ' '}${fraction.join('/')}` : written;
  });
}
