# Conseils, étapes convenues avec la famille, et ce qu'elles sont devenues.

step-answer-done = Fait
step-answer-partly = En partie
step-answer-not = Pas fait

talk-last = Convenu la dernière fois
talk-earlier = { $count ->
        [one] Une étape plus ancienne dont personne n’a parlé
       *[other] { $count } étapes plus anciennes dont personne n’a parlé
    }
talk-agreed-on = convenu le { $date }
talk-in-the-way = Qu’est-ce qui a gêné ?
talk-heading = Dire et convenir
talk-say-danger = À dire d’abord. Cochez ce que vous avez dit.
talk-say-more = { $count ->
        [one] Encore une chose à dire
       *[other] Encore { $count } choses à dire
    }
talk-say = Cochez ce que vous avez dit
talk-agree-hint = Convenez d’une petite étape, trois au plus, que la famille veut essayer. La prochaine fois vous en reparlez.
talk-step = Étape { $number }
talk-no-step = Aucune étape de la liste
talk-own-words = Avec vos mots
talk-own-words-hint = Ou pour préciser l’étape ci-dessus : qui, quand, avec quoi
talk-more-steps = Une deuxième et une troisième étape
talk-step-and-words = { $step } ({ $words })
talk-agreed-now = Vous avez convenu
talk-asked-next = La prochaine fois on vous demandera ce que c’est devenu.
talk-agreed = Convenu avec la famille
talk-before = { $count ->
        [one] Une étape avant cela
       *[other] { $count } étapes avant cela
    }
talk-way = Ce qui a gêné : { $words }
talk-unknown = Pas encore demandé

# Pour les superviseurs.
talk-team-title = Étapes convenues
talk-team-heading = { $count ->
        [0] Aucune étape signalée comme difficile
        [one] Une étape a été difficile
       *[other] { $count } étapes ont été difficiles
    }
talk-team-over = Plus de { $count } étapes ont été difficiles
talk-team-further = Autres étapes qui ont été difficiles
talk-team-lede = Depuis le { $date } : ce que des familles n’ont pas pu faire, ou seulement en partie, et pourquoi. Ce n’est la faute de personne ; cela montre où aider.
talk-team-none = Quand on note ce qu’une étape est devenue, ce qui a été difficile se trouve ici.
talk-team-by-worker = Par agent
talk-team-by-worker-hint = Étapes convenues, et ce qui a été dit d’étapes antérieures, depuis le { $date }.
talk-team-worker = Agent
talk-team-agreed = Convenues
talk-team-nobody = Aucune étape n’a encore été convenue ni racontée.
talk-team-who = { $name }, { $age }, { $village }, avec { $worker }
talk-team-link = Ce que les familles ont trouvé difficile, et pourquoi
