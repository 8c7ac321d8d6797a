import type {z} from 'zod';
import type {bassProcessor, channel, kit, receiver, speakerData, sub} from './schema/gear.ts';
import type {inForce, meterReading, response, settingsSet, signal, target} from './schema/observed.ts';
import type {profileSchema} from './schema/profile.ts';
import type {air, room, screen, seat, tapeReading} from './schema/room.ts';

export type {ChannelId} from './channels.ts';
export type {Plane} from './schema/room.ts';

export type Profile = z.infer<typeof profileSchema>;
export type Room = z.infer<typeof room>;
export type Air = z.infer<typeof air>;
export type Screen = z.infer<typeof screen>;
export type Seat = z.infer<typeof seat>;
export type Channel = z.infer<typeof channel>;
export type SpeakerData = z.infer<typeof speakerData>;
export type Sub = z.infer<typeof sub>;
export type Receiver = z.infer<typeof receiver>;
export type BassProcessor = z.infer<typeof bassProcessor>;
export type Kit = z.infer<typeof kit>;
export type Target = z.infer<typeof target>;
export type TapeReading = z.infer<typeof tapeReading>;
export type MeterReading = z.infer<typeof meterReading>;
export type Response = z.infer<typeof response>;
export type Signal = z.infer<typeof signal>;
export type SettingsSet = z.infer<typeof settingsSet>;
export type InForce = z.infer<typeof inForce>;
export type Weighting = MeterReading['weighting'];
export type LengthUnit = NonNullable<Profile['lengthUnit']>;
