import type * as z from 'zod';
import type {ChannelId} from './channels.ts';
import type {bassProcessor, channel, kit, receiver, speakerData, sub} from './schema/gear.ts';
import type {inForce, meterReading, settingsSet, signal, target} from './schema/observed.ts';
import type {profileSchema} from './schema/profile.ts';
import type {playingState, recording, response} from './schema/recorded.ts';
import type {air, planned, room, screen, seat, tapeReading} from './schema/room.ts';
import type {connection} from './schema/wiring.ts';

export type {ChannelId} from './channels.ts';
export type {Plane} from './planes.ts';
export type {LengthUnit} from './units/lengthUnit.ts';

export type Profile = z.infer<typeof profileSchema>;
export type Room = z.infer<typeof room>;
export type Planned = z.infer<typeof planned>;
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
export type Recording = z.infer<typeof recording>;
export type PlayingState = z.infer<typeof playingState>;
export type RecordedResponse = z.infer<typeof response>;
export type Signal = z.infer<typeof signal>;
export type Connection = z.infer<typeof connection>;
export type SettingsSet = z.infer<typeof settingsSet>;
export type InForce = z.infer<typeof inForce>;
/** What a set holds for one channel of the receiver, and for one output of the bass processor. */
export type ChannelSetting = NonNullable<SettingsSet['channels'][ChannelId]>;
export type OutputSetting = NonNullable<SettingsSet['outputs']>[string];
/** Id of a sub, as the profile names it. */
export type SubId = Sub['id'];
/** A speaker by its channel, or a sub: what a meter can hear by itself. */
export type SourceId = ChannelId | SubId;
export type Weighting = MeterReading['weighting'];
