/**
 * What a screen may ask of the server: each act by its name, with what is sent with it. An act declares itself in
 * its own file in `server/acts/`, beside the schema of what it takes, so that both ends have one list of them.
 */
// eslint-disable-next-line @typescript-eslint/no-empty-object-type -- filled in by the files of the acts
export interface Acts {}

export type ActName = keyof Acts;
export type ActMessage<Name extends ActName = ActName> = Acts[Name];
