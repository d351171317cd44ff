# Every rule: its short name, why it holds, the explanation, and what to do.
