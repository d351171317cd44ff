# Ce qu’un superviseur écrit à l’agent au sujet d’un enfant
desk-note-way = Écrire à l’agent au sujet de cet enfant
desk-note-title = Un mot sur { $name }
desk-note-lede = L’agent le voit dans la tournée et sur la page de l’enfant jusqu’à ce qu’il soit mis de côté. Rien ici ne change un suivi.
desk-note-words = Ce que vous voulez dire
desk-note-words-hint = Par exemple : regarder les pieds, demander pour la bouillie de la grand-mère. N’écrivez rien qui ne doive être lu par-dessus l’épaule.
desk-note-together-on = Une visite ensemble le
desk-note-together-hint = Laissez vide si vous ne venez pas.
desk-note-do = Laisser ce mot
desk-note-done = Le mot est laissé pour l’agent.
desk-note-from = { $name }, { $date } :
desk-note-together = { $name } vient avec vous le { $date }.
desk-note-aside = Lu, mettre de côté
desk-note-read = Note de { $by }, lue le { $date } par { $reader } : { $words }
desk-note-on-round = Un mot du superviseur
