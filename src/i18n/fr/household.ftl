# Le foyer : jumeaux, frères et sœurs, vus l'un après l'autre.

household-title = Foyer de { $name }
household-lede = avec { $name }, { $village }
household-due = { $count ->
        [one] { $names } est à voir
       *[other] { $count } enfants ici. À voir : { $names }
    }
household-none-due = { $count ->
        [0] Aucun enfant d’ici n’est dans le programme
        [one] Un enfant ici, rien à faire
       *[other] { $count } enfants ici, rien à faire
    }
household-start = Commencer par { $name }
household-seen = Vu aujourd’hui
household-nothing-due = Rien n’est à faire.
household-elsewhere = Inscrit à { $village }
household-unlink = N’habite pas ici
household-link = Habite ce foyer
household-likely = Peut-être aussi de ce foyer
household-likely-why = Le même téléphone, ou une personne de presque le même nom dans ce village. À vous de décider.
household-more = Un enfant de plus
household-add = Inscrire un autre enfant de ce foyer
household-add-twin = Inscrire un jumeau de { $name }
household-by-code = Un enfant de ce foyer est déjà inscrit
household-code = Code de l’enfant
household-code-hint = Il se trouve sur la page de l’enfant et sur sa carte.
household-left = { $count ->
        [one] Un enfant a quitté le programme
       *[other] { $count } enfants ont quitté le programme
    }
household-also = { $count ->
        [one] Aussi dans ce foyer :
       *[other] Aussi dans ce foyer :
    }
household-also-heading = Aussi dans ce foyer
household-next = Ensuite ici : { $name }
household-seen-then = vu à cette visite
household-page = Le foyer : jumeaux, frères et sœurs
household-register-lede = Un autre enfant de { $name } : ce que le foyer partage est rempli. Vérifiez si c’est encore vrai.
household-register-twin = Un jumeau de { $name } ? Reprendre la date de naissance.
household-same = Le foyer
household-same-yes = Habite au foyer de { $name }
