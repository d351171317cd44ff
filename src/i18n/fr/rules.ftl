# Every rule: its short name, why it holds at this visit (numbers that a finding does not have are left out),
# the rule with its default limits and their source, and what to do and say.

## Danger signs

rule-danger-general-name = Signe de danger
rule-danger-general-why = Signe de danger vu{ $signs ->
        [none] { "" }
       *[other] { " " }: { $signs }
    }.
rule-danger-general-explain = L’un de ces signes : ne peut ni boire ni téter, vomit tout, convulse, très endormi ou difficile à réveiller, inconscient, respire mal ; dès 2 mois aussi ne bouge que si on le touche. Source : PCIME, signes généraux de danger.
rule-danger-general-do = Partez tout de suite au centre de santé et restez jusqu’au départ. Gardez l’enfant au chaud ; continuez l’allaitement s’il peut et s’il est bien éveillé. Convulsions ou inconscient : couché sur le côté, rien dans la bouche. Rien d’autre d’abord.

rule-danger-young-infant-name = Signe de danger, moins de 2 mois
rule-danger-young-infant-why = Signe de danger chez un bébé de moins de 2 mois{ $signs ->
        [none] { "" }
       *[other] { " " }: { $signs }
    }.
rule-danger-young-infant-explain = Avant 2 mois, l’un de ces signes : se nourrit mal, convulse, respire vite (60 ou plus par minute, compté deux fois), thorax creusé, chaud (37,5 °C ou plus) ou froid (moins de 35,5 °C), ne bouge que si on le touche ou pas du tout. Source : PCIME jeune nourrisson, transfert urgent (de mémoire).
rule-danger-young-infant-do = Partez tout de suite au centre de santé et restez jusqu’au départ. Gardez le bébé au chaud, peau contre peau ; continuez l’allaitement s’il peut.

rule-danger-other-name = Signe de maladie
rule-danger-other-why = Signe vu{ $signs ->
        [none] { "" }
       *[other] { " " }: { $signs }
    }.
rule-danger-other-explain = Bruit rude au calme, yeux enfoncés avec pli de peau très lent, nuque raide, et dès 2 mois thorax creusé : tout de suite. Sang dans les selles ; cri faible, tout mou, tète faiblement, paupières tombantes ; dès 2 mois respire vite (50 ou plus par minute, dès 12 mois 40) : aujourd’hui. Dès 2 mois chaud ou froid : aujourd’hui avant 3 mois, sinon sous 2 jours ; se nourrit mal : sous 2 jours. Source : PCIME (de mémoire) ; autres signes ajoutés, notre choix.
rule-danger-other-do = Référez. Là où il y a du paludisme et si l’enfant est chaud : aujourd’hui. Continuez l’allaitement et donnez à boire en chemin.

rule-oedema-both-feet-name = Deux pieds gonflés
rule-oedema-both-feet-why = Les deux pieds sont gonflés : la marque du pouce reste.
rule-oedema-both-feet-explain = Gonflement des deux pieds qui garde la marque du pouce, à tout âge, même si le poids semble normal. Source : OMS et UNICEF 2009 ; OMS 2023 (de mémoire).
rule-oedema-both-feet-do = Référez aujourd’hui vers le traitement nutritionnel, avec un mot écrit. Convenez du trajet. Continuez l’allaitement.

## Food reactions

rule-reaction-severe-name = Réaction grave à un aliment
rule-reaction-severe-why = Réaction grave{ $foods ->
        [none] { "" }
       *[other] { " " }à { $foods }
    }{ $signs ->
        [none] { "" }
       *[other] { " " }: { $signs }
    }{ $minutes ->
        [none] { "" }
       *[other] , après { $minutes ->
            [one] { $minutes } minute
           *[other] { $minutes } minutes
        }
    }.
rule-reaction-severe-explain = Un signe de respiration, de gorge ou de malaise à tout moment ; ou un signe de peau et un signe digestif ensemble dans les 4 heures après l’aliment, ou à un moment inconnu. Source : critères de la World Allergy Organization 2019/2020 et NIAID/FAAN 2006 en mots simples ; la classe est notre choix.
rule-reaction-severe-do = Urgence : appelez. Arrêtez l’aliment. Rien par la bouche tant que l’enfant ne respire pas bien et n’est pas bien éveillé ; ensuite, allaitez. Médicament prescrit pour cet enfant : aidez la famille à le donner maintenant.

rule-reaction-spreading-name = Réaction à un aliment qui s’étend
rule-reaction-spreading-why = Réaction{ $foods ->
        [none] { "" }
       *[other] { " " }à { $foods }
    }{ $signs ->
        [none] { "" }
       *[other] { " " }: { $signs }
    }{ $minutes ->
        [none] { "" }
       *[other] , après { $minutes ->
            [one] { $minutes } minute
           *[other] { $minutes } minutes
        }
    }.
rule-reaction-spreading-explain = Plaques sur tout le corps, visage gonflé ou vomissements répétés seuls, à tout moment ; ou une réaction dont les signes n’ont pas été notés. Source : comme pour la réaction grave ; compter les signes inconnus est notre choix.
rule-reaction-spreading-do = Référez aujourd’hui. Arrêtez l’aliment jusqu’à ce qu’un clinicien dise qu’il est sans danger. Si la respiration, la gorge ou l’éveil changent : urgence.

rule-reaction-mild-name = Réaction légère à un aliment
rule-reaction-mild-why = Réaction légère{ $foods ->
        [none] { "" }
       *[other] { " " }à { $foods }
    }{ $signs ->
        [none] { "" }
       *[other] { " " }: { $signs }
    }{ $minutes ->
        [none] { "" }
       *[other] , après { $minutes ->
            [one] { $minutes } minute
           *[other] { $minutes } minutes
        }
    }.
rule-reaction-mild-explain = Toute autre réaction : rougeur autour de la bouche, eczéma aggravé, un vomissement, selles liquides. Sous 7 jours si l’aliment est un allergène courant, sinon sous 14. Source : comme pour la réaction grave ; les classes sont notre choix.
rule-reaction-mild-do = Arrêtez l’aliment jusqu’à ce qu’un soignant dise qu’il est sans danger. Notez combien de temps après l’aliment cela a commencé. Les autres aliments continuent.

rule-reaction-given-again-name = Aliment en pause donné de nouveau
rule-reaction-given-again-why = Donné de nouveau pendant la pause{ $date ->
        [none] { "" }
       *[other] { " " }depuis le { $date }
    }{ $foods ->
        [none] { "" }
       *[other] { " " }: { $foods }
    }.
rule-reaction-given-again-explain = Un aliment en pause depuis une visite d’avant a été donné sans qu’une personne autorisée ait levé la pause. Sous 2 jours si une réaction depuis était grave ou étendue, sinon sous 7. Notre choix.
rule-reaction-given-again-do = Rappelez sans reproche : cet aliment attend l’avis d’un soignant. Prévenez votre superviseur.

rule-feeding-swallow-trouble-name = Difficulté à avaler
rule-feeding-swallow-trouble-why = Difficulté pour avaler{ $signs ->
        [none] { "" }
       *[other] { " " }: { $signs }
    }.
rule-feeding-swallow-trouble-explain = S’étouffe, tousse, devient bleu ou voix mouillée en mangeant, plus d’une fois. Urgence si bleu, sinon sous 7 jours. Pratique courante.
rule-feeding-swallow-trouble-do = Ne passez pas à une texture plus épaisse. Le centre de santé doit observer un repas. S’il s’étouffe maintenant et ne peut ni crier ni tousser : gestes d’étouffement comme vous les avez appris, et appelez.

## Growth

rule-weight-very-low-name = Poids très bas pour l’âge
rule-weight-very-low-why = Poids très bas pour l’âge{ $weight ->
        [none] { "" }
       *[other] { " " }: { $weight }
    }{ $waz ->
        [none] { "" }
       *[other] , { $waz }
    }{ $limit ->
        [none] { "" }
       *[other] , sous { $limit }
    }.
rule-weight-very-low-explain = Poids pour l’âge sous −3. Aujourd’hui avant 6 mois ou si sous −6 et mesuré de nouveau, sinon sous 2 jours. Source : insuffisance pondérale sévère, OMS 2006 (de mémoire) ; la classe est notre choix.
rule-weight-very-low-do = Cherchez les signes de danger et les pieds gonflés, mesurez de nouveau et référez pour un examen. Dites : le poids montre qu’il faut plus d’aide ; ce n’est la faute de personne.

rule-weight-low-name = Poids bas pour l’âge
rule-weight-low-why = Poids bas pour l’âge{ $weight ->
        [none] { "" }
       *[other] { " " }: { $weight }
    }{ $waz ->
        [none] { "" }
       *[other] , { $waz }
    }{ $limit ->
        [none] { "" }
       *[other] , sous { $limit }
    }.
rule-weight-low-explain = Poids pour l’âge de −3 à moins de −2. Sous 7 jours avant 6 mois, sinon sous 14. Source : insuffisance pondérale, OMS 2006 ; avant 6 mois signe de risque, OMS 2023 (les deux de mémoire).
rule-weight-low-do = Revoyez l’alimentation ensemble et pesez de nouveau. Centre de santé selon le protocole local.

rule-wasting-severe-name = Beaucoup trop mince
rule-wasting-severe-why = Beaucoup trop mince{ $muac ->
        [none] { "" }
       *[other] { " " }: bras { $muac }
    }{ $wlz ->
        [none] { "" }
       *[other] , poids pour la taille { $wlz }
    }{ $limit ->
        [none] { "" }
       *[other] , sous { $limit }
    }.
rule-wasting-severe-explain = Dès 6 mois : bras sous 115 mm ou poids pour la taille sous −3. Source : OMS et UNICEF 2009 ; OMS 2023 (de mémoire).
rule-wasting-severe-do = Référez aujourd’hui vers le traitement nutritionnel, avec un mot écrit. Convenez du trajet. Continuez l’allaitement ; donnez à manger peu et souvent. Dites : le bras montre qu’il faut plus d’aide que la nourriture à la maison.

rule-wasting-moderate-name = Trop mince
rule-wasting-moderate-why = Trop mince{ $muac ->
        [none] { "" }
       *[other] { " " }: bras { $muac }
    }{ $wlz ->
        [none] { "" }
       *[other] , poids pour la taille { $wlz }
    }{ $limit ->
        [none] { "" }
       *[other] , sous { $limit }
    }.
rule-wasting-moderate-explain = Dès 6 mois : bras de 115 à 124 mm ou poids pour la taille de −3 à moins de −2. Source : OMS 2013 et 2023, PCIME (de mémoire) ; 7 jours au lieu de 30 car ici tous ont moins de 2 ans : notre choix.
rule-wasting-moderate-do = Référez vers un service de supplément s’il existe. Revoyez l’alimentation ensemble : un repas de plus, plus épais, avec poisson, œuf ou haricots.

rule-wasting-young-name = Trop mince, moins de 6 mois
rule-wasting-young-why = Trop mince pour un bébé de moins de 6 mois{ $muac ->
        [none] { "" }
       *[other] { " " }: bras { $muac }
    }{ $wlz ->
        [none] { "" }
       *[other] , poids pour la taille { $wlz }
    }{ $limit ->
        [none] { "" }
       *[other] , sous { $limit }
    }.
rule-wasting-young-explain = Avant 6 mois : poids pour la taille sous −3 aujourd’hui, de −3 à moins de −2 sous 2 jours ; dès 6 semaines un bras sous 110 mm sous 2 jours. Source : OMS 2023 (de mémoire, pas vérifié mot à mot).
rule-wasting-young-do = Observez une tétée. La mère et le bébé doivent être vus tous les deux. Le lait maternel continue, on ne le remplace pas à cause d’un chiffre.

rule-weight-loss-name = Poids perdu
rule-weight-loss-why = Poids perdu{ $lost ->
        [none] { "" }
       *[other] { " " }: { $lost }
    }{ $loss_percent ->
        [none] { "" }
       *[other] { " " }({ $loss_percent })
    }{ $interval_days ->
        [none] { "" }
       *[other] { " " }en { $interval_days ->
            [one] { $interval_days } jour
           *[other] { $interval_days } jours
        }
    }.
rule-weight-loss-explain = A perdu plus que l’erreur de mesure (100 g) entre deux pesées à 5 à 122 jours d’écart, la première dès 14 jours de vie. Avant 6 mois aujourd’hui ; dès 6 mois sous 2 jours pour 5 % ou plus, sinon sous 7. Source : OMS 2023 avant 6 mois (de mémoire) ; 5 % pratique courante ; 100 g de l’étude OMS de croissance 2004 (de mémoire).
rule-weight-loss-do = Pesez de nouveau sur la même balance. Demandez si l’enfant est malade, et comment vont le lait et la nourriture. Avant 6 mois, ou si la perte est grande, envoyez la famille au centre de santé dans le délai écrit sur cette page. Ce n’est la faute de personne.

rule-weight-static-name = Pas de poids pris
rule-weight-static-why = Pas de poids pris{ $interval_days ->
        [none] { "" }
       *[other] { " " }en { $interval_days ->
            [one] { $interval_days } jour
           *[other] { $interval_days } jours
        }
    }{ $lost ->
        [none] { "" }
       *[other] { " " }(moins { $lost })
    }.
rule-weight-static-explain = Aucun gain entre deux pesées : dès 7 jours d’écart avant 6 mois, 28 jours de 6 à 11 mois, 56 jours dès 12 mois. Sous 2 jours avant 6 mois, sinon sous 14. Source : absence de prise de poids, OMS 2023 (de mémoire) ; les délais sont une pratique courante.
rule-weight-static-do = Pesez de nouveau sur la même balance. Demandez si l’enfant est malade, et comment vont le lait et la nourriture. Ajoutez un repas ou une tétée et pesez à temps.

rule-weight-slow-gain-name = Prise de poids lente
rule-weight-slow-gain-why = A pris peu{ $gain ->
        [none] { "" }
       *[other] { " " }: { $gain }
    }{ $interval_days ->
        [none] { "" }
       *[other] { " " }en { $interval_days ->
            [one] { $interval_days } jour
           *[other] { $interval_days } jours
        }
    }{ $floor ->
        [none] { "" }
       *[other] , au moins { $floor } attendus
    }.
rule-weight-slow-gain-explain = A pris moins que les 5 bébés sur 100 en bonne santé qui prennent le plus lentement, jusqu’à 7 mois. Sous 7 jours avant 6 mois, sinon sous 14. Source : OMS 2009, vitesse de poids sur 1 mois, 5e centile.
rule-weight-slow-gain-do = Observez une tétée et demandez combien par jour. Pesez de nouveau à temps. Félicitez ce qui va bien.

rule-weight-drop-name = La courbe de poids descend
rule-weight-drop-why = La courbe de poids a baissé{ $z_change ->
        [none] { "" }
       *[other] { " " }de { $z_change }
    }{ $z_before ->
        [none] { "" }
       *[other] { " " }depuis { $z_before }
    }{ $waz ->
        [none] { "" }
       *[other] { " " }jusqu’à { $waz }
    }{ $interval_days ->
        [none] { "" }
       *[other] { " " }en { $interval_days ->
            [one] { $interval_days } jour
           *[other] { $interval_days } jours
        }
    }.
rule-weight-drop-explain = Le poids pour l’âge a baissé d’au moins 1,00, ou d’au moins 0,67, entre deux visites à 28 à 122 jours d’écart. De 1,00 : sous 2 jours avant 6 mois, sinon sous 7 ; de 0,67 : sous 7, sinon sous 14. Source : 0,67 est un espace d’une courbe à neuf lignes ; l’idée est de NICE NG75 2017 ; l’usage entre deux visites est notre choix.
rule-weight-drop-do = Revoyez ensemble l’alimentation et les maladies. Montrez les deux points sur la courbe.

rule-weight-drift-name = La courbe de poids descend depuis la naissance
rule-weight-drift-why = La courbe de poids a baissé depuis le début{ $z_before ->
        [none] { "" }
       *[other] , de { $z_before }
    }{ $waz ->
        [none] { "" }
       *[other] { " " }à { $waz }
    }.
rule-weight-drift-explain = Dès 6 semaines : le poids pour l’âge a baissé depuis le poids de naissance (ou la première pesée dès 4 semaines) de 0,67 s’il était sous −1,34, de 1,33 au milieu, de 2,00 au-dessus de 1,34. Sous 14 jours. Source : NICE NG75 2017, un, deux ou trois espaces de la courbe ; en z, notre choix.
rule-weight-drift-do = Montrez le premier et le dernier point sur la courbe. Revoyez l’alimentation ensemble.

rule-birth-weight-not-regained-name = Poids de naissance pas retrouvé
rule-birth-weight-not-regained-why = Sous le poids de naissance{ $weight ->
        [none] { "" }
       *[other] { " " }: { $weight }
    }{ $birth_weight ->
        [none] { "" }
       *[other] , né avec { $birth_weight }
    }{ $loss_percent ->
        [none] { "" }
       *[other] { " " }(moins { $loss_percent })
    }.
rule-birth-weight-not-regained-explain = Pendant les 2 premières semaines plus de 10 % sous le poids de naissance : aujourd’hui. De 14 à 20 jours sous ce poids : sous 2 jours. De 21 à 42 jours : aujourd’hui. Source : 10 % et 3 semaines NICE NG75 2017 ; 14 jours pratique courante.
rule-birth-weight-not-regained-do = Observez une tétée. Envoyez la famille au centre de santé pour un examen, dans le délai écrit sur cette page. Allaitez souvent, jour et nuit.

rule-birth-low-name = Né petit ou trop tôt
rule-birth-low-why = Né petit ou trop tôt{ $birth_weight ->
        [none] { "" }
       *[other] { " " }: { $birth_weight }
    }{ $gestation_days ->
        [none] { "" }
       *[other] , après { $gestation_days }
    }.
rule-birth-low-explain = Poids de naissance sous 2 500 g ou avant 37 semaines, jusqu’à 62 jours de vie et sans plan du centre de santé. Sous 1 500 g ou avant 32 semaines sous 2 jours, sinon sous 7. Source : définitions OMS du petit poids de naissance (de mémoire) ; les jours sont notre choix.
rule-birth-low-do = Vérifiez que le centre de santé a un plan. Chaleur, peau contre peau, tétées fréquentes. Dès 2 mois, demandez au centre de santé pour les gouttes de fer.

rule-length-low-name = Petit pour l’âge
rule-length-low-why = Petit pour l’âge{ $length ->
        [none] { "" }
       *[other] { " " }: { $length }
    }{ $laz ->
        [none] { "" }
       *[other] , { $laz }
    }{ $limit ->
        [none] { "" }
       *[other] , sous { $limit }
    }.
rule-length-low-explain = Taille pour l’âge sous −3 sous 14 jours ; de −3 à moins de −2 à la prochaine visite prévue. Source : retard de croissance, OMS 2006 (de mémoire) ; les classes sont notre choix.
rule-length-low-do = Revoyez l’alimentation et les maladies. Ce n’est pas une urgence, et la taille des parents compte aussi.

rule-weight-high-name = Poids élevé
rule-weight-high-why = Poids élevé{ $wlz ->
        [none] { "" }
       *[other] { " " }pour la taille : { $wlz }
    }{ $waz ->
        [none] { "" }
       *[other] , poids pour l’âge { $waz }
    }.
rule-weight-high-explain = Poids pour la taille au-dessus de 3 sous 14 jours ; de 2 à 3 à la prochaine visite prévue. Sans taille, poids pour l’âge au-dessus de 2 : mesurez la taille. Source : OMS, moins de 5 ans (de mémoire) ; l’avis d’un clinicien au-dessus de 3 est une pratique courante.
rule-weight-high-do = Mesurez de nouveau. Parlez des boissons sucrées et laissez l’enfant décider quand c’est assez. Ne réduisez jamais la nourriture ni le lait.

## Feeding

rule-solids-early-name = Aliments avant 6 mois
rule-solids-early-why = Autre chose que du lait avant l’âge de début{ $date ->
        [none] { "" }
       *[other] , depuis le { $date }
    }{ $foods ->
        [none] { "" }
       *[other] { " " }: { $foods }
    }.
rule-solids-early-explain = Aliments solides avant 180 jours sans plan du centre de santé. Avant 17 semaines sous 7 jours, plus tard sous 14. Source : OMS 2023, alimentation de complément, 6 mois (180 jours) ; 17 semaines ESPGHAN 2017.
rule-solids-early-do = Expliquez sans reproche : le lait maternel suffit jusqu’à 6 mois. Continuez l’allaitement, regardez la croissance. Centre de santé si la mère s’inquiète pour son lait.

rule-liquids-early-name = Autres boissons avant 6 mois
rule-liquids-early-why = Autre boisson que le lait avant 6 mois.
rule-liquids-early-explain = Eau, jus, thé, boisson sucrée ou autre avant 180 jours ; les sels de réhydratation et les médicaments ne comptent pas. Sous 14 jours. Source : indicateurs OMS et UNICEF 2021 (de mémoire).
rule-liquids-early-do = Le lait maternel contient assez d’eau, même quand il fait chaud. Proposez le sein plus souvent.

rule-milk-animal-early-name = Lait animal avant 6 mois
rule-milk-animal-early-why = Lait animal comme boisson avant 6 mois.
rule-milk-animal-early-explain = Lait animal comme boisson avant 6 mois sans plan du centre de santé ; le lait infantile est différent. Sous 7 jours. Pratique courante.
rule-milk-animal-early-do = Centre de santé : aide à l’allaitement, ou lait infantile. Ne diluez jamais le lait vous-même.

rule-solids-late-name = Pas encore d’aliments
rule-solids-late-why = Pas encore d’aliments en plus du lait{ $stage_months ->
        [none] { "" }
       *[other] { " " }à { $stage_months ->
            [one] { $stage_months } mois
           *[other] { $stage_months } mois
        }
    }.
rule-solids-late-explain = Aucun aliment solide commencé : dès 6 mois et 14 jours sous 14 jours, dès 7 mois (ou 8 mois d’âge quelle que soit la correction) sous 7. La première étape attend si le bébé n’est pas prêt. Source : OMS 2023, début à 6 mois ; les âges sont notre choix.
rule-solids-late-do = Regardez si le bébé est prêt, et commencez : épais, lisse, 2 à 3 cuillères à soupe, après une tétée. Dès 8 mois, demandez aussi au centre de santé.

rule-texture-behind-name = Texture en retard
rule-texture-behind-why = Texture en retard{ $texture ->
        [none] { "" }
       *[other] { " " }: mange au mieux { $texture }
    }{ $texture_expected ->
        [none] { "" }
       *[other] , pas même { $texture_expected }
    }{ $stage_months ->
        [none] { "" }
       *[other] , à { $stage_months ->
            [one] { $stage_months } mois
           *[other] { $stage_months } mois
        }
    }.
rule-texture-behind-explain = Meilleure texture prise : pas de morceaux mous à 8 mois (prochaine visite), 9 (14 jours), 10 (7 jours) ; pas de haché à 11 mois (prochaine visite), 12 (14 jours) ; pas de plat familial à 15 mois (14 jours). Source : Northstone 2001 et Coulthard 2009 pour les morceaux à 9–10 mois (un lien, pas une cause) ; le reste est notre choix.
rule-texture-behind-do = Proposez la texture suivante à 1 ou 2 repas par jour. Allez doucement, restez à côté, attention à l’étouffement. Dès 10 mois et seulement lisse : le centre de santé vérifie la déglutition.

rule-texture-watery-name = Nourriture trop liquide
rule-texture-watery-why = La nourriture est liquide : elle coule de la cuillère.
rule-texture-watery-explain = Dès 6 mois, aliments commencés, texture habituelle liquide. Sous 14 jours. Source : OPS/OMS 2003, au moins 0,8 kcal par gramme.
rule-texture-watery-do = Épaississez jusqu’à ce que cela reste sur la cuillère. Ajoutez pâte d’arachide, poudre de poisson ou haricots écrasés.

rule-meals-few-name = Peu de repas
rule-meals-few-why = Peu de repas hier{ $meals ->
        [none] { "" }
       *[other] { " " }: { $meals }
    }{ $milk_feeds ->
        [none] { "" }
       *[other] , prises de lait { $milk_feeds }
    }{ $least ->
        [none] { "" }
       *[other] , au moins { $least } attendus
    }.
rule-meals-few-explain = Allaité : moins de 2 repas de 6 à 8 mois, moins de 3 dès 9 mois. Non allaité : repas et prises de lait ensemble moins de 4. Sous 14 jours ; aucun repas pendant une maladie, ou deux fois de suite, sous 7. Source : indicateurs OMS et UNICEF 2021 (de mémoire) ; OMS 2009, chapitre modèle.
rule-meals-few-do = Ajoutez un repas ou une collation. Plus petit et plus souvent, c’est bien.

rule-milk-few-name = Peu de lait
rule-milk-few-why = Non allaité, peu de prises de lait hier{ $milk_feeds ->
        [none] { "" }
       *[other] { " " }: { $milk_feeds }
    }{ $least ->
        [none] { "" }
       *[other] , au moins { $least } attendues
    }.
rule-milk-few-explain = Non allaité : avant 6 mois 2 prises ou moins aujourd’hui, 3 à 5 sous 2 jours ; dès 6 mois moins de 2, sous 7 jours jusqu’à 11 mois, puis 14. Source : dès 6 mois OMS et UNICEF 2021 (de mémoire) ; avant 6 mois environ 6 à 8 prises (de mémoire), limites de notre choix.
rule-milk-few-do = Demandez quel lait, comment il est préparé, jamais dilué. Aidez à reprendre l’allaitement si c’est souhaité. Centre de santé s’il n’y a pas de lait.

rule-diversity-low-name = Peu de groupes d’aliments
rule-diversity-low-why = Peu de groupes d’aliments hier{ $groups ->
        [none] { "" }
       *[other] { " " }: { $groups } sur 8
    }{ $least ->
        [none] { "" }
       *[other] , au moins { $least } attendus
    }.
rule-diversity-low-explain = Dès 8 mois, moins de 5 des 8 groupes la veille : 2 ou moins sous 14 jours, 3 ou 4 à la prochaine visite, sous 14 jours si c’était déjà ainsi. Source : diversité alimentaire minimale, OMS et UNICEF 2021 (de mémoire) ; l’usage pour un enfant est notre choix.
rule-diversity-low-do = Ajoutez un groupe que la famille a déjà.

rule-iron-none-name = Pas de fer hier
rule-iron-none-why = Ni viande, ni poisson, ni fer hier{ $held_before ->
        [none] { "" }
       *[other] , ni la fois d’avant
    }.
rule-iron-none-explain = Dès 7 mois, ni viande ni poisson et pas de gouttes, poudre ou aliment enrichi en fer la veille : à la prochaine visite, sous 14 jours si c’était déjà ainsi. Source : aliment animal chaque jour, OMS 2023 ; l’âge est notre choix.
rule-iron-none-do = Poudre de poisson, viande ou foie dans la marmite. Demandez au centre de santé pour le fer.

rule-animal-food-none-name = Pas d’aliment animal hier
rule-animal-food-none-why = Ni œuf, ni poisson, ni viande, ni produit laitier hier.
rule-animal-food-none-explain = Dès 8 mois, ni œuf, ni poisson, ni viande, ni produit laitier la veille : à la prochaine visite. Source : OMS 2023.
rule-animal-food-none-do = Œuf, poisson, lait ou viande : un chaque jour si la famille peut.

rule-veg-fruit-none-name = Ni fruit ni légume hier
rule-veg-fruit-none-why = Ni fruit ni légume hier.
rule-veg-fruit-none-explain = Dès 7 mois, ni fruit ni légume la veille : à la prochaine visite. Source : indicateur « ni fruit ni légume », OMS et UNICEF 2021 (de mémoire).
rule-veg-fruit-none-do = Potiron, mangue ou feuilles dans la marmite.

rule-drink-sweet-name = Boisson sucrée
rule-drink-sweet-why = Une boisson sucrée hier.
rule-drink-sweet-explain = Une boisson sucrée la veille : avant 6 mois sous 14 jours, plus tard à la prochaine visite. Source : OMS 2023 (de mémoire).
rule-drink-sweet-do = L’eau après 6 mois et le lait maternel sont le mieux. Les boissons sucrées remplissent le ventre et abîment les dents.

rule-bottle-used-name = Biberon
rule-bottle-used-why = Un biberon avec tétine hier.
rule-bottle-used-explain = Un biberon avec tétine la veille : avant 6 mois sous 14 jours, plus tard à la prochaine visite. Source : indicateur OMS et UNICEF 2021 ; tasse ouverte : revue de 2011 dans Maternal and Child Nutrition.
rule-bottle-used-do = Une tasse ouverte se lave mieux. Si un biberon est nécessaire : le faire bouillir chaque fois. Sans reproche.

rule-food-honey-name = Miel avant 12 mois
rule-food-honey-why = Miel avant 12 mois{ $date ->
        [none] { "" }
       *[other] , { $date }
    }{ $signs ->
        [none] { "" }
       *[other] { " " }: { $signs }
    }.
rule-food-honey-explain = Miel avant 12 mois : sous 7 jours. Selles dures, cri faible, bébé tout mou, tète faiblement ou paupières tombantes à cette visite ou jusqu’à 30 jours après : aujourd’hui. Source : pratique courante ; les signes du botulisme du nourrisson viennent 3 à 30 jours après (page de santé publique lue).
rule-food-honey-do = Arrêtez le miel. Pendant 30 jours, surveillez selles dures, cri faible, mollesse, succion faible, paupières tombantes : un de ces signes, au centre de santé le jour même.

rule-food-choking-name = Aliment qui peut étouffer
rule-food-choking-why = Un aliment sous une forme qui peut étouffer{ $foods ->
        [none] { "" }
       *[other] { " " }: { $foods }
    }.
rule-food-choking-explain = Un aliment à risque d’étouffement donné sous une forme dangereuse. Sous 14 jours. Pratique courante.
rule-food-choking-do = Montrez la forme sûre : pâte ou poudre de noix, morceaux râpés ou bien cuits, sans os ni arêtes. Assis droit, restez avec le bébé.

rule-food-low-value-name = Thé, sel ou sucre
rule-food-low-value-why = Donné hier{ $signs ->
        [none] { "" }
       *[other] { " " }: { $signs }
    }{ $foods ->
        [none] { "" }
       *[other] { " " }: { $foods }
    }.
rule-food-low-value-explain = Thé ou café jusqu’à 23 mois ; sel ou sucre ajouté avant 12 mois. À la prochaine visite. Pratique courante.
rule-food-low-value-do = Le thé prend le fer des aliments. Cuisinez sans sel ni sucre pour le bébé et sortez d’abord sa part.

rule-food-local-wait-name = Aliment avant l’âge local
rule-food-local-wait-why = Un aliment avant son âge d’attente local{ $foods ->
        [none] { "" }
       *[other] { " " }: { $foods }
    }.
rule-food-local-wait-explain = Le programme demande d’attendre un certain âge pour cet aliment. À la prochaine visite. Source : conseil local dans le fichier du protocole.
rule-food-local-wait-do = Dites à la famille le conseil local et dès quel âge l’aliment convient.

rule-breastfeeding-stopped-name = Allaitement arrêté
rule-breastfeeding-stopped-why = Pas allaité hier, l’était avant{ $age_months ->
        [none] { "" }
       *[other] , à { $age_months ->
            [one] { $age_months } mois
           *[other] { $age_months } mois
        }
    }.
rule-breastfeeding-stopped-explain = N’est plus allaité, l’a été, et sans plan du centre de santé : avant 6 mois sous 2 jours, jusqu’à 11 mois sous 7, plus tard à la prochaine visite. Source : OMS 2023, allaitement jusqu’à 2 ans ou plus ; les classes sont notre choix.
rule-breastfeeding-stopped-do = Demandez pourquoi, avec douceur. Aidez à reprendre si c’est souhaité ; sinon un lait sûr. La mère décide. Suivez le protocole VIH s’il s’applique.

rule-breastfeeding-trouble-name = Allaitement difficile
rule-breastfeeding-trouble-why = Allaitement difficile : douleur, peu de lait ou mauvaise prise du sein.
rule-breastfeeding-trouble-explain = La mère parle de douleur, de peu de lait ou de mauvaise prise du sein : avant 6 mois sous 2 jours, sinon sous 7. Source : OMS 2023 avant 6 mois, PCIME (les deux de mémoire).
rule-breastfeeding-trouble-do = Observez une tétée. Aidez pour la position et la prise du sein, ou amenez quelqu’un qui sait.

rule-appetite-poor-name = Refuse presque tout
rule-appetite-poor-why = Refuse presque toute nourriture{ $days ->
        [none] { "" }
       *[other] { " " }depuis { $days ->
            [one] { $days } jour
           *[other] { $days } jours
        }
    }.
rule-appetite-poor-explain = Refuse presque tout depuis 3 jours ou plus : sous 2 jours si un suivi de croissance est ouvert, sinon sous 7. Pratique courante.
rule-appetite-poor-do = Cherchez une maladie. Petits repas mous, souvent, sans forcer. Le sein plus souvent.

## Measuring and writing

rule-data-z-outside-name = Valeur presque impossible
rule-data-z-outside-why = Une valeur qui n’arrive presque jamais{ $waz ->
        [none] { "" }
       *[other] { " " }: poids pour l’âge { $waz }
    }{ $laz ->
        [none] { "" }
       *[other] { " " }: taille pour l’âge { $laz }
    }{ $wlz ->
        [none] { "" }
       *[other] { " " }: poids pour la taille { $wlz }
    }.
rule-data-z-outside-explain = Poids pour l’âge hors de −6 à 5, taille pour l’âge hors de −6 à 6, poids pour la taille hors de −5 à 5, et pas mesuré de nouveau. Très bas : aujourd’hui, car l’enfant peut être en danger ; sinon sous 2 jours. Source : limites OMS 2006 ; les classes sont notre choix.
rule-data-z-outside-do = Mesurez de nouveau avant de partir. Regardez la date de naissance, le sexe et les unités. Si c’est très bas et qu’on ne peut pas mesurer de nouveau : cherchez les signes de danger et référez aujourd’hui.

rule-data-weight-jump-name = Saut de poids
rule-data-weight-jump-why = Le poids a sauté{ $weight_before ->
        [none] { "" }
       *[other] { " " }de { $weight_before }
    }{ $weight ->
        [none] { "" }
       *[other] { " " }à { $weight }
    }{ $interval_days ->
        [none] { "" }
       *[other] { " " }en { $interval_days ->
            [one] { $interval_days } jour
           *[other] { $interval_days } jours
        }
    }.
rule-data-weight-jump-explain = Le poids pour l’âge a changé d’au moins 2,00 en 61 jours, ou plus de 100 g par jour sur 3 jours ou plus, et pas pesé de nouveau. Sous 2 jours. Notre choix.
rule-data-weight-jump-do = Pesez de nouveau : le bon enfant, sans habits, balance à zéro, chiffres dans l’ordre ? Si c’est pareil, cochez que vous avez pesé de nouveau.

rule-data-length-shrunk-name = Taille plus courte
rule-data-length-shrunk-why = La taille a diminué{ $length_before ->
        [none] { "" }
       *[other] { " " }: de { $length_before }
    }{ $length ->
        [none] { "" }
       *[other] { " " }à { $length }
    }.
rule-data-length-shrunk-explain = Plus de 0,7 cm de moins qu’avant et pas mesuré de nouveau. Sous 14 jours. Source : 0,7 cm de l’étude OMS de croissance 2004 (de mémoire) ; la classe est notre choix.
rule-data-length-shrunk-do = Mesurez de nouveau à deux, jambes droites, tête contre la planche.

rule-data-length-jump-name = Saut de taille
rule-data-length-jump-why = La taille a sauté{ $length_before ->
        [none] { "" }
       *[other] { " " }de { $length_before }
    }{ $length ->
        [none] { "" }
       *[other] { " " }à { $length }
    }{ $interval_days ->
        [none] { "" }
       *[other] { " " }en { $interval_days ->
            [one] { $interval_days } jour
           *[other] { $interval_days } jours
        }
    }.
rule-data-length-jump-explain = La taille pour l’âge a changé d’au moins 2,00 en 92 jours et pas mesuré de nouveau. Sous 14 jours. Notre choix.
rule-data-length-jump-do = Mesurez de nouveau à deux. Regardez aussi la dernière saisie.

rule-data-age-problem-name = Naissance : chiffres qui ne vont pas
rule-data-age-problem-why = La date, le poids de naissance et les semaines de grossesse ne vont pas ensemble{ $birth_weight ->
        [none] { "" }
       *[other] { " " }: { $birth_weight }
    }{ $gestation_days ->
        [none] { "" }
       *[other] { " " }après { $gestation_days }
    }.
rule-data-age-problem-explain = Des faits de naissance qui se contredisent, par exemple avant 28 semaines avec plus de 2 500 g. Sous 7 jours. Notre choix.
rule-data-age-problem-do = Regardez ensemble le carnet de santé et corrigez la saisie.

rule-data-twin-record-name = Peut-être noté deux fois
rule-data-twin-record-why = C’est peut-être le même enfant, ou la même visite, deux fois.
rule-data-twin-record-explain = Une deuxième visite à la maison ou au centre de santé le même jour, ou un enfant du même village, de même date de naissance et de nom semblable. Sous 7 jours. Notre choix.
rule-data-twin-record-do = Comparez les deux. Dites qu’ils sont différents, ou dites à votre superviseur lequel est en trop. Des jumeaux sont deux enfants.

rule-data-same-again-name = Même poids trois fois
rule-data-same-again-why = Le même poids trois fois{ $weight ->
        [none] { "" }
       *[other] { " " }: { $weight }
    }.
rule-data-same-again-explain = Le même poids, à 10 g près, qu’aux deux dernières pesées, avant 12 mois et pas pesé de nouveau. Sous 14 jours. Notre choix.
rule-data-same-again-do = A-t-on pesé cette fois ? Pesez de nouveau et écrivez ce que montre la balance.

rule-data-conflict-name = Réponses qui ne vont pas ensemble
rule-data-conflict-why = Deux réponses ne vont pas ensemble{ $foods ->
        [none] { "" }
       *[other] { " " }: { $foods }
    }.
rule-data-conflict-explain = Pas d’aliment solide mais des repas ; seulement du lait maternel mais un autre aliment ; ou une texture sans aliments commencés. Sous 7 jours. Notre choix.
rule-data-conflict-do = Demandez de nouveau et corrigez ce qui est écrit.

rule-measure-missing-name = Pas pesé deux fois
rule-measure-missing-why = Pas de poids à cette visite ni à celle d’avant.
rule-measure-missing-explain = Pas de poids aujourd’hui ni à la dernière visite à la maison ou au centre de santé. Sous 14 jours. Notre choix.
rule-measure-missing-do = Apportez la balance, ou convenez d’un jour au centre de santé.

## Visits

rule-visit-overdue-name = Visite en retard
rule-visit-overdue-why = La visite est en retard{ $days ->
        [none] { "" }
       *[other] { " " }de { $days ->
            [one] { $days } jour
           *[other] { $days } jours
        }
    }{ $date ->
        [none] { "" }
       *[other] { " " }: elle était prévue au plus tard le { $date }
    }.
rule-visit-overdue-explain = Le temps d’une visite prévue est passé sans visite. Calendrier : pratique courante ; les jours avant et après sont notre choix. Le programme peut changer les deux.
rule-visit-overdue-do = Allez à la maison, ou écrivez pourquoi pas.

rule-visit-lost-name = Pas vu depuis longtemps
rule-visit-lost-why = Pas vu depuis longtemps{ $days ->
        [none] { "" }
       *[other] { " " }: { $days ->
            [one] { $days } jour
           *[other] { $days } jours
        }
    }{ $date ->
        [none] { "" }
       *[other] , la dernière fois le { $date }
    }.
rule-visit-lost-explain = Pas de visite depuis 60 jours avant 12 mois, 90 jours ensuite. Notre choix.
rule-visit-lost-do = Demandez aux voisins et au centre de santé. La famille est-elle partie ? Écrivez ce que vous apprenez.

rule-referral-no-outcome-name = Référé, résultat inconnu
rule-referral-no-outcome-why = Référé{ $date ->
        [none] { "" }
       *[other] { " " }le { $date }
    }, résultat pas encore connu{ $days ->
        [none] { "" }
       *[other] , { $days ->
            [one] { $days } jour
           *[other] { $days } jours
        } de trop
    }.
rule-referral-no-outcome-explain = Un suivi urgent ou un transfert sans résultat : 2 jours après un urgent, 7 jours après les autres. Notre choix.
rule-referral-no-outcome-do = Demandez à la famille ou au centre de santé ce qui s’est passé, et notez-le.
