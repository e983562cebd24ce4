"""What each kind of card shows, in a few words."""

SHOWS = {
    "lathe-chart": "a material: a row a diameter, a column a blade",
    "overview": "a blade: a row a diameter, a column a material",
    "blade-card": "a blade: a row a material, where it may be used",
    "centre-card": "a material: from the outside to the centre",
    "spindle-curves": "a material: what the spindle gives and cuts ask",
    "window-curves": "a material: least and most feed over diameter",
    "width-curves": "a material: the widest blade over diameter",
    "speed-curves": "a material: spindle speed over diameter",
    "speed-nomogram": "spindle speed by ruler",
    "power-nomogram": "cutting power by ruler",
    "change-card": "two shop files: what changed (compare makes it)",
    "set-up-card": "a job, step by step, with the set-up drawn (job makes it)",
    "batch-card": "a job of many pieces: a box to tick for each (job makes it)",
    "student-card": "a lathe's chart cut down to a lesson (class makes it)",
    "exercise-sheet": "a student's exercises, to be worked by hand (class makes it)",
    "answer-key": "a student's exercises worked out, for the teacher (class makes it)",
    "answer-matrix": "the answers of a class, a student a row (class makes it)",
    "safety-quiz": "questions about safety at a lathe (class makes it)",
    "sign-off-card": "what was shown and done at a lathe, to be signed (class makes it)",
    "class-marks": "a class's marks and the mistakes made (mark makes it)",
}
