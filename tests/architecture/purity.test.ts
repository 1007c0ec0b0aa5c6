import { describe, expect, it } from 'vitest';
import { impurities, isPure, strayEffects } from './purity-rule';
import { codeFiles, readText } from './source-tree';

describe('the purity rule', () => {
  it.each([
    "import sharp from 'sharp';",
    "import type { Sharp } from 'sharp';",
    "import cv from 'opencv-wasm';",
    "import * as ort from 'onnxruntime-node';",
    "import { PrismaClient } from '@prisma/client';",
    "import { readFileSync } from 'node:fs';",
    "import { readFile } from 'fs/promises';",
    "import path from 'path';",
    "import { headers } from 'next/headers';",
    "import { useState } from 'react';",
    "const fs = await import('node:fs');",
    'export const zone = process.env.TZ;',
    "export const zone = process['env'];",
    'export const now = Date.now();',
    'export const now = new Date();',
    'export const now = new Date;',
    'export const now = Date();',
    'export const clock = Date.now;',
    'export const chance = Math.random();',
    'export const chance = () => crypto.randomUUID();',
    "export const page = fetch('x');",
    "console.log('here');",
    'export const here = import.meta.dirname;',
    'export const start = performance.now();',
    'setTimeout(() => {}, 1);',
    'export const { env } = process;',
  ])('catches in a pure stage: %s', (planted) => {
    expect(impurities('lib/measure/planted.ts', planted)).toHaveLength(1);
  });

  it.each([
    "export const then = new Date('2026-01-01');",
    'export const next = (random: () => number) => random();',
    'export const page = port.fetch(1);',
    'export const table = { process: 1, console: 2 };',
    'export interface Port { fetch: () => void }',
    '// Date.now() would make two runs differ',
    "export const text = 'Math.random()';",
    "import { z } from 'zod';",
    "import { contours } from 'd3-contour';",
  ])('lets stand in a pure stage: %s', (planted) => {
    expect(impurities('lib/measure/planted.ts', planted)).toEqual([]);
  });

  it('counts pipeline, report and the shared words as pure, edges and commands not', () => {
    const pure = ['lib/units.ts', 'lib/pipeline/a.ts', 'lib/report/a.ts', 'lib/edges/env/a.ts', 'lib/commands/a.ts'].map(isPure);
    expect(pure).toEqual([true, true, true, false, false]);
  });

  it.each([
    ['lib/edges/paper/planted.ts', "import sharp from 'sharp';"],
    ['lib/commands/planted.ts', "import sharp from 'sharp';"],
    ['lib/edges/decode/planted.ts', "import cv from 'opencv-wasm';"],
    ['lib/edges/infer/planted.ts', "const cv = require('@techstark/opencv-js');"],
    ['lib/edges/vision/planted.ts', "import * as ort from 'onnxruntime-web';"],
    ['lib/server/planted.ts', "import { PrismaClient } from '@prisma/client';"],
    ['app/page.tsx', "import { PrismaClient } from '@prisma/client';"],
    ['lib/edges/db/planted.ts', 'export const url = process.env.DATABASE_URL;'],
    ['lib/server/planted.ts', 'export const words = process.argv;'],
  ])('catches an effect in a folder that does not own it: %s with %s', (file, planted) => {
    expect(strayEffects(file, planted)).toHaveLength(1);
  });

  it.each([
    ['lib/edges/decode/planted.ts', "import sharp from 'sharp';"],
    ['lib/edges/vision/planted.ts', "import cv from 'opencv-wasm';"],
    ['lib/edges/infer/planted.ts', "import * as ort from 'onnxruntime-node';"],
    ['lib/edges/db/planted.ts', "import { PrismaClient } from '@prisma/client';"],
    ['lib/edges/env/planted.ts', 'export const url = process.env.DATABASE_URL;'],
    ['lib/commands/planted.ts', 'export const words = process.argv;'],
    ['tests/edges/decode/planted.test.ts', "import sharp from 'sharp';"],
    ['lib/edges/vision/planted.ts', "process.listeners('exit');"],
  ])('lets an effect be in the folder that owns it: %s with %s', (file, planted) => {
    expect(strayEffects(file, planted)).toEqual([]);
  });
});

describe('the tree', () => {
  it('has no effects in its pure folders', () => {
    expect(codeFiles('lib').flatMap((file) => impurities(file, readText(file)))).toEqual([]);
  });

  it('has each effect in the one folder that owns it', () => {
    expect(codeFiles().flatMap((file) => strayEffects(file, readText(file)))).toEqual([]);
  });
});
