"""A class and its lathes -> exercises with other numbers for each student, and their answers.

kinds      what an exercise asks, and at which level
exercise   one exercise: givens, answer with its accepted range, the mistakes it invites
"""
