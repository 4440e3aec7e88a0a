/** What the screen "Board health" says, in English. Technicians and trainers read it: what it means, who does what. */
export const boardHealthEn = {
  "health.tool.self-check": "Self-check",
  "health.tool.walk": "Walk with a probe",
  "health.tool.lead": "Test a lead",
  "health.self.what": "Pull every lead out first. The bench then tries each contact alone.",
  "health.self.start": "Start the check",
  "health.self.again": "Check again",
  "health.self.cleared": "Is no lead in? Then the board itself joins them. The check names where.",
  "health.self.leads-out": "All leads are out",
  "health.self.staff":
    "If all leads are out, the board itself joins them. Trainer or technician: unlock, then check again.",
  "health.self.sound": "Nothing is wrong. Every contact answers.",
  "health.self.progress": "Contacts checked",
  "health.self.faults": "Wrong with the board: {count}",
  "health.known": "Known now, before a check: {count}",
  "health.remedy": "What to do",
  "health.other-ends":
    "Or the diode at the other end of the lead is bridged: {where}. Move that end to a free contact. If the fault goes, it was there.",

  "health.stuck-low": "It reads as joined all the time. The wire touches 0 V, or its output stays on.",
  "health.stuck-low.remedy":
    "Trainer: pull the leads there one by one. If it stays, the technician looks for a short at this contact, then changes its output chip.",
  "health.stuck-high": "It stays at 3.3 V. A lead plugged in there is not felt.",
  "health.stuck-high.remedy":
    "Trainer: leave this contact out of the tasks. Technician: look for a short to 3.3 V at this contact.",
  "health.dead-output": "Its output does not pull. Its lead is felt only from the other end.",
  "health.dead-output.remedy":
    "Trainer: you can go on. Technician: check the diode of this contact, then its output chip.",
  "health.dead-input": "Its input does not hear. Its lead is felt only at the other end.",
  "health.dead-input.remedy":
    "Trainer: you can go on. Technician: check the resistor of this contact, then its input chip.",
  "health.no-answer": "It does not answer at all. The bench cannot tell what is plugged in there.",
  "health.no-answer.remedy":
    "Trainer: leave it out of the tasks. Technician: look for a broken wire behind this contact, then a chip that is not seated.",
  "health.outputs-tied": "They read as one, with no lead between them.",
  "health.outputs-tied.remedy":
    "Trainer: see that no lead is in, then check again. Technician: look for a solder bridge or a strand between these contacts.",
  "health.loose-contact": "It keeps changing. A plug or a wire is loose there.",
  "health.loose-contact.remedy":
    "Learner or trainer: push the plug in. If it goes on, try another lead. If it still goes on, the technician mends the contact.",
  "health.open-chain":
    "The chain of input chips is cut: {inputChipCount} answer, counted from dataIn. Nothing can be read.",
  "health.open-chain.remedy":
    "Technician: switch off, seat the ribbon cables between the chips, and look for a cut wire. The bench goes on by itself.",
  "health.wrong-length":
    "The board has {inputChipCount} input chips; its description says {expectedChipCount}.",
  "health.wrong-length.remedy":
    "Technician: see that the right board description is set, then that every part of the board is plugged in.",
  "health.code-without-cable": "A plug tells its size, but none of its cores makes contact.",
  "health.code-without-cable.remedy":
    "Learner or trainer: push the plug in. If it stays, try another lead; then the technician looks at the code contacts.",
  "health.unknown-code": "The plug has a code that the board description does not know.",
  "health.unknown-code.remedy":
    "Trainer: take another lead. Technician: check the straps in the plug against the label sheet.",
  "health.group-too-large": "So many contacts are joined that the reading cannot be trusted.",
  "health.group-too-large.remedy":
    "Trainer: pull stacked leads out until few are left. If it stays, call the technician.",
  "health.codes-differ": "The plugs at the two ends of a lead tell different sizes. Its size is not known.",
  "health.codes-differ.remedy":
    "Learner or trainer: take another lead. Technician: check the straps in both plugs against the label sheet.",
  "health.noisy-board":
    "Readings of the same board do not agree with one another. Nothing it says is believed.",
  "health.noisy-board.remedy":
    "Technician: switch off, seat the ribbon cables, shorten them, and see that each chip has its supply and its capacitor. The bench goes on by itself.",
  "health.doubtful-lead": "They read as joined, but nobody was seen to plug a lead there.",
  "health.doubtful-lead.remedy":
    "Learner or trainer: pull that lead out and plug it in again. If no lead is there, pull all leads; then trainer or technician: run the self-check.",
  "health.probe-down": "The probe lies on a contact or on the other probe.",
  "health.probe-down.remedy": "Learner or trainer: lift the probe and check again.",
  "health.no-tie": "A word sent round the chain does not come back. Leads are still read.",
  "health.no-tie.remedy":
    "Technician: fit the tie from the last 595 to the first 165 (wiring list). If it is there, the chain of output chips is cut.",
  "health.wrong-order":
    "Output chips are answered by other input chips than their own: {order}. Both chains are whole, but their orders differ.",
  "health.wrong-order.remedy":
    "Technician: switch off and hold the order of the chips against the wiring list: 595 number 0 is next to dataOut, 165 number 0 farthest from dataIn. A → H: that chip's eight wires are the other way round.",
  "health.no-board": "No contact answers. The board is not plugged in or has no supply.",
  "health.no-board.remedy":
    "Technician: check the ribbon cable and the 3.3 V supply of the board. The bench goes on by itself.",

  "health.walk.what": "Touch one contact after another with a probe. Each one stands here when it is felt.",
  "health.walk.simulated": "This board is simulated: tap a contact to put the red probe on it.",
  "health.walk.start": "Start the walk",
  "health.walk.stop": "End the walk",
  "health.walk.left": "Left to touch: {count}",
  "health.walk.all": "Every contact was felt.",
  "health.walk.touched": "Touched: {count}",
  "health.walk.now": "Felt: {where}",
  "health.walk.none": "Nothing touched yet.",
  "health.walk.no-probes": "This board has no probes.",

  "health.lead.what": "Plug one lead between two entries. Choose both entries here.",
  "health.lead.first": "First end",
  "health.lead.second": "Second end",
  "health.lead.choose": "choose",
  "health.lead.test": "Test it",
  "health.lead.waiting": "Reading. Keep the lead still.",
  "health.lead.whole": "Every core is joined.",
  "health.lead.none": "No core is joined.",
  "health.lead.part": "Not whole. Put this lead aside and mend it.",
  "health.lead.joined": "joined",
  "health.lead.open": "open",
  "health.lead.crossed": "goes to {where}",
  "health.lead.core": "{core} core",
  "health.lead.code": "Code read: {code}",
  "health.lead.code-size": "Code read: {code}, which is {size}",
  "health.lead.code-none": "No code read",
  "health.lead.codes-differ": "The two ends have different codes. The technician mends the plug.",
  "health.pick.station": "Which station?",
  "health.pick.entry": "Which entry of {where}?",
  "health.pick.contact": "Which contact of {where}?",
  "health.swapped-pins": "Signals are on the wrong pins: {swaps}.",
  "health.swapped-pins.remedy":
    "Technician: switch off and wire the header by the pin table of the build guide.",
} as const;
