# What to do now, after saving.
# En danger. De mémoire, d'après les gestes de premiers secours publics : le clinicien du programme doit approuver chaque ligne.

emergency-title = Urgence : { $name }
emergency-heading = { $sex ->
        [F] est peut-être en danger. Restez avec elle et appelez.
       *[M] est peut-être en danger. Restez avec lui et appelez.
    }
emergency-source = Les gestes de cette page sont écrits de mémoire, d’après les premiers secours publics. Le clinicien du programme doit approuver ce texte. Ce que vous avez appris en formation passe avant.
emergency-which = Que voyez-vous ?
emergency-write = Noter ce qui s’est passé
emergency-child-page = la page de l’enfant
emergency-choking = Étouffement : aliment ou objet dans la gorge, ou bleu
emergency-fits = Convulsions, ou impossible à réveiller
emergency-reaction = Réaction à un aliment : respire mal, gonflement, urticaire avec vomissements, pâle et mou
emergency-other = Autre danger : respire mal, ne peut pas boire, vomit tout, très endormi
emergency-after-food = réaction après { $food }
emergency-signs-after-food = { $signs }, après { $food }
emergency-say = Dites : « Bébé, { $age }. { $seen }. »

emergency-reaction-1-do = De l’adrénaline { $sex ->
        [F] lui a été prescrite ? Aidez la famille à la donner tout de suite.
       *[M] lui a été prescrite ? Aidez la famille à la donner tout de suite.
    }
emergency-reaction-1-how = Quelqu’un d’autre appelle pendant ce temps. Arrêtez l’aliment.
emergency-reaction-2-do = Appelez.
emergency-reaction-2-how = Pas de réponse ? Trouvez un transport maintenant.
emergency-reaction-3-do = { $sex ->
        [F] Couchez-la à plat, ou tenez-la couchée dans vos bras.
       *[M] Couchez-le à plat, ou tenez-le couché dans vos bras.
    }
emergency-reaction-3-how = Respire mal : à demi assis. Vomit ou somnole : sur le côté. Jamais debout contre l’épaule. Ne respire pas : réanimation du nourrisson comme vous l’avez apprise.
emergency-reaction-4-do = Rien par la bouche
emergency-reaction-4-how = jusqu’à ce { $sex ->
        [F] qu’elle respire bien et soit bien réveillée ; ensuite, le sein.
       *[M] qu’il respire bien et soit bien réveillé ; ensuite, le sein.
    }
emergency-reaction-5-do = Partez, même { $sex ->
        [F] si elle se remet.
       *[M] s’il se remet.
    }
emergency-reaction-5-how = Allez avec eux, ou confiez l’enfant vous-même. Cela peut revenir dans les heures qui suivent.

emergency-fits-1-do = Couchez{ $sex ->
        [F] -la sur le côté,
       *[M] -le sur le côté,
    } sur quelque chose de mou.
emergency-fits-1-how = Rien dans la bouche. Ne tenez ni les bras ni les jambes. Regardez l’heure du début.
emergency-fits-2-do = Appelez.
emergency-fits-2-how = Pas de réponse ? Trouvez un transport maintenant.
emergency-fits-3-do = Ne respire pas ?
emergency-fits-3-how = Réanimation du nourrisson comme vous l’avez apprise.
emergency-fits-4-do = Gardez{ $sex ->
        [F] -la au chaud.
       *[M] -le au chaud.
    }
emergency-fits-4-how = Rien par la bouche avant un réveil complet ; ensuite, le sein.
emergency-fits-5-do = Partez, même { $sex ->
        [F] si elle se réveille.
       *[M] s’il se réveille.
    }
emergency-fits-5-how = Allez avec eux, ou confiez l’enfant vous-même.

emergency-choking-1-do = Peut{ $sex ->
        [F] -elle crier ou tousser ? Laissez-la tousser, et restez.
       *[M] -il crier ou tousser ? Laissez-le tousser, et restez.
    }
emergency-choking-1-how = Ne peut ni crier ni tousser : continuez ici tout de suite, quelqu’un d’autre appelle.
emergency-choking-2-do = Jusqu’à 5 tapes dans le dos.
emergency-choking-2-how = { $age ->
        [baby] À plat ventre sur votre avant-bras, la tête plus bas que le corps. Avec le talon de la main, entre les omoplates.
       *[child] Penché en avant, ou en travers de vos genoux. Avec le talon de la main, entre les omoplates.
    }
emergency-choking-3-do = { $age ->
        [baby] Puis jusqu’à 5 poussées sur la poitrine.
       *[child] Puis jusqu’à 5 poussées sur le ventre.
    }
emergency-choking-3-how = { $age ->
        [baby] Sur le dos, tête basse : deux doigts sur le sternum, poussez d’un coup sec. N’appuyez jamais sur le ventre d’un bébé. Regardez dans la bouche : n’enlevez que ce que vous voyez, jamais le doigt à l’aveugle. Recommencez par le dos.
       *[child] Par-derrière, un poing au-dessus du nombril, tirez vers vous et vers le haut. Regardez dans la bouche : n’enlevez que ce que vous voyez, jamais le doigt à l’aveugle. Recommencez par le dos.
    }
emergency-choking-4-do = Devient mou ou ne respire plus ?
emergency-choking-4-how = Réanimation du nourrisson comme vous l’avez apprise, et appelez.
emergency-choking-5-do = Partez, même si c’est sorti.
emergency-choking-5-how = Un soignant doit voir tout bébé devenu bleu ou aidé ainsi.

emergency-other-1-do = Appelez.
emergency-other-1-how = Pas de réponse ? Trouvez un transport maintenant.
emergency-other-2-do = { $sex ->
        [F] Couchez-la
       *[M] Couchez-le
    } comme la respiration est la plus facile.
emergency-other-2-how = Respire mal : à demi assis. Vomit ou somnole : sur le côté. Ne respire pas : réanimation du nourrisson comme vous l’avez apprise.
emergency-other-3-do = Gardez{ $sex ->
        [F] -la au chaud,
       *[M] -le au chaud,
    } peau contre peau si la mère peut.
emergency-other-3-how = Tête couverte, pas de bouillotte.
emergency-other-4-do = Le sein seulement { $sex ->
        [F] si elle est bien réveillée et avale.
       *[M] s’il est bien réveillé et avale.
    }
emergency-other-4-how = Sinon, rien par la bouche.
emergency-other-5-do = Allez avec eux, ou confiez l’enfant vous-même.
emergency-other-5-how = Restez jusqu’à leur départ. Écrire vient en dernier.

# Que faire maintenant, juste après l'enregistrement d'une visite.

result-title = Que faire maintenant : { $name }
result-title-today = Référer aujourd’hui : { $name }
result-saved = Enregistré, { $date }
result-feet-swollen = les deux pieds gonflés
result-told = Un signe de danger ou une réaction
result-told-why = C’est coché, et une partie n’a pas pu être lue. Considérez que c’est grave.
result-spoons-then-cup = { $spoons } Plus tard : { $cups }
result-arm = bras { $value }
result-no-concern = Rien d’inquiétant dans ce que vous avez vérifié : { $name }
result-nothing-checked = Rien n’a été mesuré ni vérifié : { $name }
result-open-for = Encore ouvert pour { $name } : { $open }
result-open-are = Encore ouvert : { $open }.
result-unchecked = Pas vérifié : { $parts }.
unchecked-signs = signes de danger
unchecked-feet = pieds
unchecked-weight = poids
unchecked-length = longueur
unchecked-arm = tour de bras
unchecked-milk = lait
unchecked-food = repas
unchecked-swallowing = déglutition
result-gain = { $name } a pris { $gain } depuis le { $date } : dites-le, cela fait plaisir.
result-corrected = Né trop tôt : les âges sont corrigés de { $weeks ->
        [one] { $weeks } semaine
       *[other] { $weeks } semaines
    }{ $days ->
        [0] {""}
        [one] {" "}et { $days } jour
       *[other] {" "}et { $days } jours
    }.
result-also = Trouvé aussi
result-still-open = Encore ouvert d’avant
result-still-urgent = Encore urgent depuis la dernière fois
result-still-urgent-do = Aucune réponse d’un soignant n’est notée. Demandez comment cela s’est passé, aidez-les à partir aujourd’hui, et notez le résultat.
result-still-urgent-told = { $outcome }, noté le { $date }.
result-still-urgent-answered = Demandez comment cela va et faites ce que le soignant a dit. Le suivi se ferme quand une visite montre que c’est fini.
result-closed = Terminé aujourd’hui : { $names }.
result-due = À revoir d’ici { $date }.
result-why = Pourquoi
result-note = Note de référence
result-child-page = La page de l’enfant
result-correct = Corriger cette visite
result-write-rest = Écrire le reste, ou corriger
result-next-home = Prochaine maison
result-say = Dites à la famille
result-say-today = « { $name } a besoin de soins que je ne peux pas donner à la maison. Vous avez bien fait de { $sex ->
        [F] la
       *[M] le
    } faire examiner. Ce n’est la faute de personne. Je reviendrai pour savoir comment cela s’est passé. »
result-today-heading = Emmenez { $name } se faire soigner aujourd’hui
result-today-signs-do = Cherchez encore les signes de danger.
result-today-signs-how = Un seul : urgence, appelez { $number }
result-local-number = votre numéro d’urgence local
result-today-travel-do = Convenez du trajet, et de qui part.
result-today-travel-how = Demandez ce qui pourrait les empêcher de partir, et aidez.
result-today-feed-do = Continuez à { $sex ->
        [F] l’allaiter.
       *[M] l’allaiter.
    }
result-today-feed-how = Proposez ce que prend l’enfant, peu et souvent, en route. Pas un aliment qui a donné une réaction.
result-today-milk-do = Continuez le lait habituel.
result-today-milk-how = À la tasse, jamais dilué. D’autres aliments peu et souvent en route ; pas celui qui a donné une réaction.
result-today-note-do = Donnez la note de référence.
result-today-note-how = Lisez-la-leur. Convenez du jour où vous revenez.
result-later-advice = Les autres conseils de cette visite sont sur la page de l’enfant, pour plus tard.
result-next-for = La suite pour { $name }, à { $age }
result-texture = Proposez : { $texture }.
result-meals = { $from ->
        [0] Jusqu’à { $to } repas par jour,
       *[other] { $from } à { $to } repas par jour,
    }
result-and-breast-milk = et le lait maternel.
result-and-milk = et du lait bien préparé, à la tasse.
result-snack = Un goûter si l’enfant veut.
result-enough = L’enfant décide quand c’est assez.
result-spoons = { $from } à { $to } cuillères à soupe par repas.
result-cup = { $share } tasse par repas.
result-cup-range = { $from } à { $to } tasse par repas.
result-milk-only = Le lait maternel seul, jour et nuit.
result-milk-only-other = Du lait seul, à la tasse, bien préparé et jamais dilué.
result-milk-only-why = Pas encore d’eau, de thé ni d’aliment.
result-new-food = Un nouvel aliment : { $food }.
result-new-food-how = Proposez-le 2 à 3 jours avant le suivant.
result-next-visit = Revenez entre le { $from } et le { $to }.
result-sooner = Plus tôt { $sex ->
        [F] si elle est malade ou mange moins.
       *[M] s’il est malade ou mange moins.
    }
result-sources-differ = Les sources ne sont pas d’accord sur le début de certains aliments : votre protocole local décide.
note-heading = Note de référence
note-child = Enfant
note-code = Code, lieu
note-date = Vu le
note-measured = Mesuré
note-seen = Signes
note-why = Pourquoi
note-from = De
note-caution = Proposé par des règles écrites, ce n’est pas un diagnostic. Mesuré et demandé à la maison.
