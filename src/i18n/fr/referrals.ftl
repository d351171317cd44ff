# Le mot pour le centre de santé, et les références suivies jusqu’au bout
referral-link = Mot pour le centre de santé
referral-title = Mot pour le centre de santé, { $name }
referral-heading = Merci de voir cet enfant
referral-family = Avec { $name }, { $village }
referral-by = Envoyé par { $name } le { $date }
referral-why = Pourquoi
referral-own-judgement = Selon le jugement de l’agent :
referral-numbers = Mesures
referral-no-numbers = Rien n’a été mesuré.
referral-wfa = poids pour l’âge { $z }
referral-wfl = poids pour la taille { $z }
referral-arm = bras { $mm } mm
referral-odd = semble étrange, mesurer encore
referral-birth = Poids de naissance { $weight }
referral-z = z-scores selon les normes de croissance OMS de 2006 et 2007 ; pour un enfant né tôt, par l’âge corrigé. Suggéré par des règles, pas un diagnostic.
referral-holds = Aliments suspendus après une réaction
referral-answer = Réponse du centre de santé
referral-answer-to = À dire à { $name }
referral-more = { $count ->
        [one] et une raison moins urgente
       *[other] et { $count } raisons moins urgentes
    }
referral-answer-on = Vu le, par
referral-answer-found = Constaté
referral-answer-done = Fait, donné
referral-answer-food = Aliments permis ou non
referral-answer-back = Revenir le, et quand tout de suite
referral-answer-thanks = Merci de rendre cette partie à la famille. L’agent note ce qu’il en est advenu.
referral-print = Imprimez-le avec votre navigateur : il tient sur une feuille A5. Il porte le nom de l’enfant : donnez-le seulement à la famille.
referrals-title = Références
referrals-link = Toutes les références, et ce qu’il en est advenu
referrals-heading = { $count ->
        [0] Aucune référence n’attend de réponse
        [one] Un enfant a été envoyé et n’a pas encore de réponse
       *[other] { $count } enfants ont été envoyés et n’ont pas encore de réponse
    }
referrals-heading-more = Plus de { $count } enfants ont été envoyés et n’ont pas encore de réponse
referrals-further = Autres enfants envoyés, sans réponse encore
referrals-lede = Une référence finit quand quelqu’un écrit ce qu’il en est advenu, pas quand le jour est passé.
referrals-waiting = Les plus urgents d’abord
referrals-with = Où, avec qui
referrals-waits = Attend
referrals-next = Ensuite
referrals-expected = attendue pour le { $date }
referrals-by = jusqu’au { $date }
referrals-told = Ce qu’il en est advenu depuis le { $date }
referrals-told-none = Rien n’a été écrit pendant ce temps.
referrals-told-latest = Les plus récentes d’abord
referrals-became = Ce qu’il en est advenu
referrals-on = Écrit à la visite
