import { existsSync, statfsSync } from "node:fs";
import { tmpdir } from "node:os";

const memory = "/dev/shm";
const roomBytes = 512 * 1024 * 1024;

/** Whether the machine's memory takes files, and enough of them: some have a memory disk of 64 MB. */
const hasRoom = (): boolean => {
  if (!existsSync(memory)) return false;
  const { bavail, bsize } = statfsSync(memory);
  return bavail * bsize >= roomBytes;
};

/**
 * Where the checks keep logs that need not outlive them: in memory where there is room, so that no check waits for a
 * disk. What a power cut leaves on a disk is checked on a disk of its own (`tests/faults/`).
 */
export const fastFolder = (): string => (hasRoom() ? memory : tmpdir());
