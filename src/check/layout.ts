import type { Finding } from "../findings/finding.js";
import { directionFrom } from "../listen/direction.js";
import { type Breach, breachesOf, channelInLayout, type Window, windowOf } from "../listen/window.js";
import type { Room, Speaker } from "../room/room.js";
import { isLfe, systemNamed } from "../standards/loudspeaker-layouts.js";
import { about, type Subject } from "./subject.js";

/*
 * The loudspeakers against the room's layout, a system of ITU-R BS.2051. Low-frequency effects are left out of all of
 * it: their place is no direction.
 */

/** Channels that are missing, stand twice, or belong to another layout. Nothing without a layout. */
export function channelsOfLayout(room: Room): Finding[] {
  if (room.layout === null) return [];
  return [
    ...missingChannels(room),
    ...room.speakers
      .filter(({ channel, area }) => !isLfe(channel) && channel !== area)
      .flatMap((speaker) => notInLayout(room, speaker) ?? standsTwice(room, speaker) ?? []),
  ];
}

function missingChannels({ layout, speakers }: Room): Finding[] {
  const system = layout === null ? null : systemNamed(layout);
  if (system === null) return [];
  const there = new Set(speakers.map(({ channel }) => channel));
  return system.channels
    .filter(({ label, lfe }) => !lfe && !there.has(label))
    .map(({ label }) => ({
      code: "channel-missing",
      level: "warning",
      figures: { channel: label, layout: system.name },
      speaker: null,
      surface: null,
      path: ["layout"],
      fix: null,
      accepted: null,
    }));
}

const aboutChannel = ({ id, surface, path }: Speaker) => ({
  speaker: id,
  surface,
  path: [...path, "channel"],
  fix: null,
  accepted: null,
});

function notInLayout(room: Room, speaker: Speaker): Finding | null {
  const { channel } = speaker;
  if (room.layout === null || channelInLayout(room, channel) !== null) return null;
  return {
    ...aboutChannel(speaker),
    code: "channel-not-in-layout",
    level: "warning",
    figures: { channel, layout: room.layout },
  };
}

/**
 * Told of the second and later ones. No error: two loudspeakers may share a channel on purpose, and the openings of
 * both can be cut.
 */
function standsTwice({ speakers }: Room, speaker: Speaker): Finding | null {
  const { channel } = speaker;
  const first = speakers.find((other) => other.channel === channel);
  if (first === undefined || first.id === speaker.id) return null;
  return {
    ...aboutChannel(speaker),
    code: "channel-twice",
    level: "warning",
    figures: { channel, other: first.id },
  };
}

/** A direction from the reference seat that the layout does not allow its channel; each figure by itself. */
export function outsideWindow(subject: Subject): Finding[] {
  const { room, speaker, position } = subject;
  const window = windowOf(room, speaker.channel);
  if (window === null) return [];
  const direction = directionFrom(room.reference.ear, position);
  return breachesOf(window, direction).map((breach) => outside(subject, window, breach));
}

function outside(subject: Subject, { toleranceDeg }: Window, breach: Breach): Finding {
  return {
    ...about(subject),
    code: "outside-window",
    level: "warning",
    figures: {
      ...breach,
      channel: subject.speaker.channel,
      toleranceDeg: toleranceDeg[breach.figure],
    },
    fix: null,
  };
}
