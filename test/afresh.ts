import {costlyPartsOf} from '../source/commands/costlyParts.ts';
import type {Profile, SettingsSet} from '../source/profile/types.ts';
import * as inputs from '../source/study/calibration/blend/blendInputs.ts';
import * as reach from '../source/study/calibration/headroom/headroom.ts';
import * as calibration from '../source/study/calibration/solve.ts';
import * as sheet from '../source/study/comparison/sheetData.ts';
import * as plans from '../source/study/placement/comparePlans.ts';
import type {Compared} from '../source/study/placement/planChange.ts';
import {adjustNetwork} from '../source/study/survey/adjust.ts';

// What is computed from a profile with its costly parts computed afresh, as a command does.

export const solve = (profile: Profile) => calibration.solve(profile, costlyPartsOf(profile));

export const headroom = (profile: Profile) => reach.headroom(profile, costlyPartsOf(profile));

export const blendInputs = (profile: Profile) => inputs.blendInputs(profile, costlyPartsOf(profile));

export const sheetData = (profile: Profile, set?: SettingsSet) =>
	sheet.sheetData(profile, {network: adjustNetwork(profile), solution: solve(profile)}, set);

const surveyed = (profile: Profile) => ({network: adjustNetwork(profile), screen: profile.screen});

export const comparePlans = (older: Profile, newer: Profile, compared: Compared) =>
	plans.comparePlans(surveyed(older), surveyed(newer), compared);
