import type { Finding } from '../decide/finding';
import type { Assessment } from '../pipeline/assess-episode';

const date = (at: string): string => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;

const lineOf = ({ level, rule, at, sentence, closed }: Finding): string =>
  `${level.padEnd(6)} ${rule.padEnd(20)} ${date(at)}  ${sentence}${closed ? ` [closed ${date(closed.at)} by ${closed.by}: ${closed.reason}]` : ''}`;

/** Findings and trend as a few lines for a terminal. That nothing was found is said as just that. */
export function assessSummary({ findings, trend, ruleBookVersion, askEveryTime }: Assessment): string {
  const { reach, erythemaArea, rawArea } = trend.series;
  const slopes = Object.entries({ reach, erythemaArea, rawArea }).map(([name, { slopePerDay, points, unit, trend: seen }]) => {
    const slope = slopePerDay ? `${slopePerDay.slope.toFixed(2)} (${slopePerDay.slopeFrom.toFixed(2)} to ${slopePerDay.slopeTo.toFixed(2)}) ${unit}/d, ${seen}` : 'too few photos for a slope';
    return `${name.padEnd(14)} ${String(points.length).padStart(2)} photos  ${slope}`;
  });
  const refused = trend.refused.length > 0 ? [`${trend.refused.length} photos could not be used`] : [];
  return [
    ...(findings.length > 0 ? findings.map(lineOf) : ['No rule applies to what was sent.']),
    '',
    ...slopes,
    ...refused,
    ...(askEveryTime.length > 0 ? [`Ask every time: ${askEveryTime.join(', ')}`] : []),
    `Rule book ${ruleBookVersion}`,
  ].join('\n');
}
