import type { Component } from 'svelte';
import type { StepId } from '../state/steps.ts';

type Panel = () => Promise<{ readonly default: Component }>;

/** The panel of each step, fetched when the step is first shown or the browser has nothing to do. */
export const panels: Readonly<Record<StepId, Panel>> = {
  blade: () => import('./BladePanel.svelte'),
  grinder: () => import('./GrinderPanel.svelte'),
  fixture: () => import('./FixturePanel.svelte'),
  checks: () => import('./ChecksPanel.svelte'),
  parts: () => import('./PartsPanel.svelte'),
  setup: () => import('./SetupPanel.svelte'),
  designs: () => import('./DesignsPanel.svelte'),
};
