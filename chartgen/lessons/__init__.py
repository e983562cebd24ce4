"""A class and its lathes -> exercises with other numbers for each student, and their answers.

kinds            what an exercise asks, and at which level
exercise         one exercise: givens, answer with its accepted range, the mistakes it invites
class_units      the units that a class's numbers are given and asked in
accepted         what passes for right, and which mistakes can be told from it
place            where an exercise is worked: lathe, material, blade, units
cells            every bar a lathe's class may be asked about, worked out once
choices          the numbers that an exercise may be drawn from
speeds, paces    exercises of speed; of handle and time
forces, bounds   exercises of force, power, torque; of the limits of a window
bars, scales     pieces a bar; values read off a nomogram or a curve
catalogue        which kinds a level has, and what makes each
draws            who gets which numbers, by hashing
assign           papers for any slice of a class
answer_text      a written answer -> number, or option
marking          right or wrong, and which mistake; the summary of a class
key_data         what marking needs, as plain data and back
"""
