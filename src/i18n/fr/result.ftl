# What to do now, after saving.
# En danger. De mémoire, d'après les gestes de premiers secours publics : le clinicien du programme doit approuver chaque ligne.

emergency-title = Urgence : { $name }
emergency-heading = { $sex ->
        [F] est peut-être en danger. Restez avec elle et appelez.
       *[M] est peut-être en danger. Restez avec lui et appelez.
    }
emergency-source = Les gestes de cette page sont écrits de mémoire, d’après les premiers secours publics. Le clinicien du programme doit approuver ce texte. Ce que vous avez appris en formation passe avant.
emergency-which = Que voyez-vous ?
emergency-write = Noter ce qui s’est passé
emergency-child-page = la page de l’enfant
emergency-choking = Étouffement : aliment ou objet dans la gorge, ou bleu
emergency-fits = Convulsions, ou impossible à réveiller
emergency-reaction = Réaction à un aliment : respire mal, gonflement, urticaire avec vomissements, pâle et mou
emergency-other = Autre danger : respire mal, ne peut pas boire, vomit tout, très endormi
emergency-after-food = réaction après { $food }
emergency-signs-after-food = { $signs }, après { $food }
emergency-say = Dites : « Bébé, { $age }. { $seen }. »

emergency-reaction-1-do = De l’adrénaline { $sex ->
        [F] lui a été prescrite ? Aidez la famille à la donner tout de suite.
       *[M] lui a été prescrite ? Aidez la famille à la donner tout de suite.
    }
emergency-reaction-1-how = Quelqu’un d’autre appelle pendant ce temps. Arrêtez l’aliment.
emergency-reaction-2-do = Appelez.
emergency-reaction-2-how = Pas de réponse ? Trouvez un transport maintenant.
emergency-reaction-3-do = { $sex ->
        [F] Couchez-la à plat, ou tenez-la couchée dans vos bras.
       *[M] Couchez-le à plat, ou tenez-le couché dans vos bras.
    }
emergency-reaction-3-how = Respire mal : à demi assis. Vomit ou somnole : sur le côté. Jamais debout contre l’épaule. Ne respire pas : réanimation du nourrisson comme vous l’avez apprise.
emergency-reaction-4-do = Rien par la bouche
emergency-reaction-4-how = jusqu’à ce { $sex ->
        [F] qu’elle respire bien et soit bien réveillée ; ensuite, le sein.
       *[M] qu’il respire bien et soit bien réveillé ; ensuite, le sein.
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
emergency-fits-2-how = Pas de réponse ? Trouvez un transport maintenant.
emergency-fits-3-do = Ne respire pas ?
emergency-fits-3-how = Réanimation du nourrisson comme vous l’avez apprise.
emergency-fits-4-do = Gardez{ $sex ->
        [F] -la au chaud.
       *[M] -le au chaud.
    }
emergency-fits-4-how = Rien par la bouche avant un réveil complet ; ensuite, le sein.
emergency-fits-5-do = Partez, même { $sex ->
        [F] si elle se réveille.
       *[M] s’il se réveille.
    }
emergency-fits-5-how = Allez avec eux, ou confiez l’enfant vous-même.

emergency-choking-1-do = Peut{ $sex ->
        [F] -elle crier ou tousser ? Laissez-la tousser, et restez.
       *[M] -il crier ou tousser ? Laissez-le tousser, et restez.
    }
emergency-choking-1-how = Ne peut ni crier ni tousser : continuez ici tout de suite, quelqu’un d’autre appelle.
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
        [baby] Sur le dos, tête basse : deux doigts sur le sternum, poussez d’un coup sec. N’appuyez jamais sur le ventre d’un bébé. Regardez dans la bouche : n’enlevez que ce que vous voyez, jamais le doigt à l’aveugle. Recommencez par le dos.
       *[child] Par-derrière, un poing au-dessus du nombril, tirez vers vous et vers le haut. Regardez dans la bouche : n’enlevez que ce que vous voyez, jamais le doigt à l’aveugle. Recommencez par le dos.
    }
emergency-choking-4-do = Devient mou ou ne respire plus ?
emergency-choking-4-how = Réanimation du nourrisson comme vous l’avez apprise, et appelez.
emergency-choking-5-do = Partez, même si c’est sorti.
emergency-choking-5-how = Un soignant doit voir tout bébé devenu bleu ou aidé ainsi.

emergency-other-1-do = Appelez.
emergency-other-1-how = Pas de réponse ? Trouvez un transport maintenant.
emergency-other-2-do = { $sex ->
        [F] Couchez-la
       *[M] Couchez-le
    } comme la respiration est la plus facile.
emergency-other-2-how = Respire mal : à demi assis. Vomit ou somnole : sur le côté. Ne respire pas : réanimation du nourrisson comme vous l’avez apprise.
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
