/** What the screen "Check the board" says, in English. Technicians and trainers read it: what it means, who does what. */
export const boardCheckEn = {
  "check.tool.self-check": "Self-check",
  "check.tool.walk": "Walk with a probe",
  "check.tool.lead": "Test a lead",
  "check.self.what": "Pull every lead out first. The bench then tries each contact alone.",
  "check.self.start": "Start the check",
  "check.self.again": "Check again",
  "check.self.sound": "Nothing is wrong. Every contact answers.",
  "check.self.progress": "Contacts checked",
  "check.self.faults": "Wrong with the board: {count}",
  "check.known": "Known now, before a check: {count}",
  "check.where.probe": "{colour} probe",
  "check.where.red": "Red",
  "check.where.black": "Black",
  "check.where.more": "{where} and {count} more",
  "check.where.board": "Whole board",
  "check.remedy": "What to do",

  "check.stuck-low": "It reads as joined all the time. The wire touches 0 V, or its output stays on.",
  "check.stuck-low.remedy":
    "Trainer: pull the leads there one by one. If it stays, the technician looks for a short at this contact, then changes its output chip.",
  "check.stuck-high": "It stays at 3.3 V. A lead plugged in there is not felt.",
  "check.stuck-high.remedy":
    "Trainer: leave this contact out of the tasks. Technician: look for a short to 3.3 V at this contact.",
  "check.dead-output": "Its output does not pull. Its lead is felt only from the other end.",
  "check.dead-output.remedy":
    "Trainer: you can go on. Technician: check the diode of this contact, then its output chip.",
  "check.dead-input": "Its input does not hear. Its lead is felt only at the other end.",
  "check.dead-input.remedy":
    "Trainer: you can go on. Technician: check the resistor of this contact, then its input chip.",
  "check.no-answer": "It does not answer at all. The bench cannot tell what is plugged in there.",
  "check.no-answer.remedy":
    "Trainer: leave it out of the tasks. Technician: look for a broken wire behind this contact, then a chip that is not seated.",
  "check.outputs-tied": "They read as one, with no lead between them.",
  "check.outputs-tied.remedy":
    "Trainer: see that no lead is in, then check again. Technician: look for a solder bridge or a strand between these contacts.",
  "check.loose-contact": "It keeps changing. A plug or a wire is loose there.",
  "check.loose-contact.remedy":
    "Learner or trainer: push the plug in. If it goes on, try another lead. If it still goes on, the technician mends the contact.",
  "check.open-chain": "The signal does not come back from the board. Nothing can be read.",
  "check.open-chain.remedy":
    "Technician: switch off, seat the ribbon cables between the chips, and look for a cut wire. The bench goes on by itself.",
  "check.wrong-length":
    "The board has {inputChipCount} input chips; its description says {expectedChipCount}.",
  "check.wrong-length.remedy":
    "Technician: see that the right board description is set, then that every part of the board is plugged in.",
  "check.swapped-pins": "Signals are on the wrong pins: {swaps}.",
  "check.swap": "{signal} on {pin}",
  "check.signal.shiftClock": "shiftClock",
  "check.signal.dataOut": "dataOut",
  "check.signal.latch": "latch",
  "check.signal.load": "load",
  "check.signal.dataIn": "dataIn",
  "check.signal.codeIn": "codeIn",
  "check.signal.outputEnable": "outputEnable",
  "check.swapped-pins.remedy":
    "Technician: switch off and wire the header by the pin table of the build guide.",
  "check.code-without-cable": "A plug tells its size, but none of its cores makes contact.",
  "check.code-without-cable.remedy":
    "Learner or trainer: push the plug in. If it stays, try another lead; then the technician looks at the code contacts.",
  "check.unknown-code": "The plug has a code that the board description does not know.",
  "check.unknown-code.remedy":
    "Trainer: take another lead. Technician: check the straps in the plug against the label sheet.",
  "check.group-too-large": "So many contacts are joined that the reading cannot be trusted.",
  "check.group-too-large.remedy":
    "Trainer: pull stacked leads out until few are left. If it stays, call the technician.",
  "check.codes-differ": "The plugs at the two ends of a lead tell different sizes. Its size is not known.",
  "check.codes-differ.remedy":
    "Learner or trainer: take another lead. Technician: check the straps in both plugs against the label sheet.",
  "check.noisy-board":
    "Readings of the same board do not agree with one another. Nothing it says is believed.",
  "check.noisy-board.remedy":
    "Technician: switch off, seat the ribbon cables, shorten them, and see that each chip has its supply and its capacitor. The bench goes on by itself.",
  "check.no-board": "No contact answers. The board is not plugged in or has no supply.",
  "check.no-board.remedy":
    "Technician: check the ribbon cable and the 3.3 V supply of the board. The bench goes on by itself.",

  "check.walk.what": "Touch one contact after another with a probe. Each one stands here when it is felt.",
  "check.walk.simulated": "This board is simulated: tap a contact to put the red probe on it.",
  "check.walk.start": "Start the walk",
  "check.walk.stop": "End the walk",
  "check.walk.left": "Left to touch: {count}",
  "check.walk.all": "Every contact was felt.",
  "check.walk.touched": "Touched: {count}",
  "check.walk.now": "Felt: {where}",
  "check.walk.none": "Nothing touched yet.",
  "check.walk.no-probes": "This board has no probes.",

  "check.lead.what": "Plug one lead between two entries. Choose both entries here.",
  "check.lead.first": "First end",
  "check.lead.second": "Second end",
  "check.lead.choose": "choose",
  "check.lead.test": "Test it",
  "check.lead.waiting": "Reading. Keep the lead still.",
  "check.lead.whole": "Every core is joined.",
  "check.lead.none": "No core is joined.",
  "check.lead.part": "Not whole. Put this lead aside and mend it.",
  "check.lead.joined": "joined",
  "check.lead.open": "open",
  "check.lead.crossed": "goes to {where}",
  "check.lead.core": "{core} core",
  "check.lead.code": "Code read: {code}",
  "check.lead.code-size": "Code read: {code}, which is {size}",
  "check.lead.code-none": "No code read",
  "check.lead.codes-differ": "The two ends have different codes. The technician mends the plug.",
  "check.pick.station": "Which station?",
  "check.pick.entry": "Which entry of {where}?",
  "check.pick.contact": "Which contact of {where}?",
  "refused.no-probes": "This board has no probes.",
} as const;
