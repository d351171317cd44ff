# Conseils, petits pas convenus avec la famille, et ce qu'ils sont devenus.

step-answer-done = Fait
step-answer-partly = En partie
step-answer-not = Pas fait

talk-last = Convenu la dernière fois
talk-earlier = { $count ->
        [one] Un pas plus ancien dont personne n’a parlé
       *[other] { $count } pas plus anciens dont personne n’a parlé
    }
talk-agreed-on = convenu { $date }
talk-in-the-way = Qu’est-ce qui a gêné ?
talk-heading = Dire et convenir
talk-say-danger = À dire d’abord. Cochez ce que vous avez dit.
talk-say-more = { $count ->
        [one] Encore une chose à dire
       *[other] Encore { $count } choses à dire
    }
talk-say = Cochez ce que vous avez dit
talk-agree-hint = Convenez d’un petit pas, trois au plus, que la famille veut essayer. La prochaine fois vous en reparlez.
talk-step = Pas { $number }
talk-no-step = Aucun pas de la liste
talk-own-words = Avec vos mots
talk-own-words-hint = Ou pour préciser le pas ci-dessus : qui, quand, avec quoi
talk-more-steps = Un deuxième et un troisième pas
talk-step-and-words = { $step } ({ $words })
talk-agreed-now = Vous avez convenu
talk-asked-next = La prochaine fois on vous demandera ce que c’est devenu.
talk-agreed = Convenu avec la famille
talk-before = { $count ->
        [one] Un pas avant cela
       *[other] { $count } pas avant cela
    }
talk-way = Ce qui a gêné : { $words }
talk-unknown = Pas encore demandé

# Pour les superviseurs.
talk-team-title = Pas convenus
talk-team-heading = { $count ->
        [0] Aucun pas signalé comme difficile
        [one] Un pas a été difficile
       *[other] { $count } pas ont été difficiles
    }
talk-team-over = Plus de { $count } pas ont été difficiles
talk-team-lede = Depuis le { $date } : ce que des familles n’ont pas pu faire, ou seulement en partie, et pourquoi. Ce n’est la faute de personne ; cela montre où aider.
talk-team-none = Quand on note ce qu’un pas est devenu, ce qui a été difficile se trouve ici.
talk-team-by-worker = Par agent
talk-team-by-worker-hint = Pas convenus, et ce qui a été dit de pas antérieurs, depuis le { $date }.
talk-team-worker = Agent
talk-team-agreed = Convenus
talk-team-nobody = Aucun pas n’a encore été convenu ni raconté.
talk-team-who = { $name }, { $age }, { $village }, avec { $worker }
talk-team-link = Ce que les familles ont trouvé difficile, et pourquoi
