# Le bureau du superviseur : ce qui est en retard, pourquoi, clore, confier, partir, l’équipe.

# Ce qui est en retard
late-title = En retard
late-heading-urgent = { $count ->
        [one] Une référence urgente est sans réponse
       *[other] { $count } références urgentes sont sans réponse
    }
late-heading-late = { $count ->
        [one] Un suivi est en retard
       *[other] { $count } suivis sont en retard
    }
late-heading-unseen = { $count ->
        [one] Rien n’est en retard, et un enfant n’a pas été vu depuis longtemps
       *[other] Rien n’est en retard, et { $count } enfants n’ont pas été vus depuis longtemps
    }
late-heading-none = Rien n’est en retard
late-where = { $date } · { $villages ->
        [one] { $villages } village
       *[other] { $villages } villages
    }, { $workers ->
        [one] { $workers } agent
       *[other] { $workers } agents
    }, { $children ->
        [one] { $children } enfant
       *[other] { $children } enfants
    }
late-nobody = Aucune zone et aucun agent ne vous sont confiés encore. Demandez à l’administrateur.
late-urgent-child = { $name }, { $age }, { $village }
late-urgent-since = Depuis le { $date }, avec { $worker }. Personne n’a encore écrit la suite.
late-urgent-waiting = Envoyé au centre de santé, avec { $worker }. Personne n’a encore écrit s’ils y sont arrivés.
late-write-outcome = Écrire la suite
late-call = Appeler { $name }
late-see-why = Voir pourquoi
late-jump-late = { $count ->
        [one] { $count } suivi est en retard
       *[other] { $count } suivis sont en retard
    }
late-jump-unseen = { $count ->
        [one] { $count } enfant pas vu depuis longtemps
       *[other] { $count } enfants pas vus depuis longtemps
    }
late-sieve = Resserrer la liste
late-worker = Agent
late-village = Village
late-urgency = Degré
late-as-of = À la date du
late-rule = Sujet
late-days-least = Jours de retard
late-days-from = { $count ->
        [one] { $count } jour et plus
       *[other] { $count } jours et plus
    }
late-all = Tous
late-list-heading = Suivis en retard
late-list-none = Aucun, avec ce qui est choisi plus haut.
late-list-first = D’abord ce qui dépasse le plus ce que son urgence permet ; les jours comptent depuis le jour prévu
late-column-child = Enfant
late-column-why = Pourquoi
late-column-late = Retard
late-due-today = Pour aujourd’hui
late-days = { $count ->
        [one] { $count } jour de retard
       *[other] { $count } jours de retard
    }
late-next = Page suivante
late-first-page = Première page
late-unseen-heading = Pas vus depuis longtemps
late-unseen-rule = Avant 12 mois : { $young } jours et plus ; à partir de 12 mois : { $older }. C’est le protocole du programme qui le dit.
late-unseen-off = Le protocole en vigueur ne cherche pas les enfants qui n’ont pas été vus.
late-unseen-none = Chaque enfant a été vu à temps.
late-unseen-never = jamais vu depuis l’inscription
late-whole = Toute la liste
late-whole-none = Rien sur cette page.
late-urgent-heading = Références urgentes sans réponse
late-heading-urgent-more = Plus de { $count } références urgentes restent sans réponse
late-heading-unseen-more = Rien n’est en retard, et plus de { $count } enfants n’ont pas été vus depuis longtemps
late-jump-unseen-more = Plus de { $count } enfants pas vus depuis longtemps
late-held-heading = Aliments suspendus depuis longtemps
late-held-rule = Suspendus depuis plus de { $count } jours : demandez à un agent de santé si l’aliment peut revenir, pour qu’il ne soit pas perdu pour de bon. Un allergène courant : c’est au clinicien de décider. Notre choix.
late-held-since = depuis le { $date }
late-hand-heading = Qui aurait besoin d’un coup de main
late-hand-most = { $name } a le plus de suivis en retard.
late-hand-none = Personne n’a de suivi en retard.
late-hand-note = Pour aider, pas pour classer : les petits nombres varient.
late-hand-key = En retard, par degré :
late-by-worker = Par agent
late-by-village = Par village
late-children = Enfants
late-open = Ouverts
late-shape-head = { $class }, en retard
late-all-row = Tous
late-move = Confier un enfant : ouvrez d’abord sa page.
late-team = L’équipe

# Pourquoi
why-title = Pourquoi : { $name }, { $class }
why-heading = { $name } : { $why }
why-measured = Remarqué
why-measured-at = le { $date }, { $where }, par { $who }
why-check-by = À revoir au plus tard le
why-check-was = Était à revoir avant
why-source = La règle en mots
why-rule = Règle
why-rule-line = { $rule }, protocole { $protocol } { $version }
why-do = Faire et dire
why-closes = Quand il se clôt
why-close-resolved = De lui-même, à une visite suivante où la règle ne tient plus.
why-close-urgent = Quand quelqu’un écrit la suite au centre de santé, ou que d’autres visites montrent que c’est passé.
why-close-supervisor = Un superviseur peut le clore avec une raison.
why-close-not-yet = Un superviseur ne peut pas le clore avant que quelqu’un ait écrit la suite.
why-also = Vrai aussi
why-also-covered = Couvert par celui-ci :
why-history = Son histoire
why-history-line = { $date } : { $what }
why-event-opened = ouvert, { $class }, à revoir au plus tard le { $due }
why-event-refreshed = toujours vrai, { $class }, à revoir au plus tard le { $due }
why-event-raised = plus urgent : { $class }, à revoir au plus tard le { $due }
why-event-changed = ce que l’on en sait a changé
why-event-outcome = une suite a été écrite
why-event-closed = clos : { $reason }
why-event-reopened = rouvert : ce qui l’avait clos a été corrigé
why-by = par { $name }
why-closed = Clos le { $date } : { $reason }.
why-closed-by = Par { $name } : { $category }. « { $note } »
why-write = Écrire la suite
why-call = Appeler { $name }
why-caution = Suggéré par une règle, pas un diagnostic. Ces chiffres viennent de ce qui a été tapé : si l’un paraît étrange, mesurez encore avant d’inquiéter la famille. Référez selon votre propre jugement même si aucune règle ne le dit. Respectez la famille : demandez d’abord.
why-move = Confier à un autre agent

# Clore
close-title = Le clore avec une raison
close-lede = Il quitte les listes pour de bon. Si la règle tient encore à une visite suivante, un nouveau s’ouvre.
close-category = Quelle sorte de raison
close-note = La raison, pour qui la lira ensuite
close-note-hint = Au moins 10 caractères.
close-do = Le clore
close-done = Clos, avec votre raison.
close-already = { $name } l’a clos le { $date }. Rien n’a été changé.
close-typed = Ce que vous avez écrit n’a pas été enregistré ici, puisque le suivi était déjà clos. Le voici.
close-typed-words = Ce que vous avez écrit
close-typed-hint = Vous pouvez le laisser comme note pour l’agent, sur la page de l’enfant.
close-typed-do = Le laisser comme note
close-already-by-itself = Il s’est clos le { $date } : { $reason }. Rien n’a été changé.

# Confier
move-title = Confier { $name } à un autre agent
move-now = Maintenant avec { $worker }, { $village }, depuis le { $date }.
move-worker = Agent
move-area = Zone
move-from = À partir de quel jour
move-from-hint = Aujourd’hui, ou un jour depuis le { $date }.
move-reason = Pourquoi
move-reason-hint = Par exemple : la famille habite maintenant chez la grand-mère.
move-history = Où { $name } a été
move-history-line = { $village }, avec { $worker }, du { $from } au { $to }
move-history-now = { $village }, avec { $worker }, depuis le { $from }
move-do = Confier
move-done = Confié à { $worker }, { $village }. Les suivis ouverts sont allés avec.
move-changed = Quelqu’un a changé cet enfant entre-temps. Regardez ce qui est écrit ici maintenant, puis envoyez encore.

# Partir
leave-title = { $name } quitte le programme
leave-lede = Tous les suivis ouverts finissent. Ce qui a été noté reste.
leave-how = Ce qui s’est passé
leave-moved = La famille a déménagé
leave-transferred-out = Passé à un autre programme
leave-refused = La famille ne veut pas de visites
leave-consent-withdrawn = La famille a repris son accord
leave-consent-hint = L’enfant quitte aussitôt toutes les listes. Dites-le à votre administrateur, pour que les données gardées soient effacées aussi.
leave-died = L’enfant est mort
leave-died-hint = Ni visite, ni appel, ni message ne sera prévu. Prenez votre temps, et rendez visite à la famille comme le ferait un voisin.
leave-died-tell = Si l’enfant est mort, dites-le vous-même à votre superviseur. Vous n’avez pas à l’écrire ici.
leave-on = Quel jour
leave-on-approximate = Au plus près de ce que dit la famille.
leave-note = Ce que la famille veut faire savoir
leave-note-hint = Peut rester vide.
leave-do = Enregistrer
leave-done-died = C’est noté. L’enfant n’est plus sur aucune liste. Personne ne sera envoyé en visite.
leave-done = C’est noté. Tous les suivis ouverts sont finis.
leave-already = Parti le { $date } : { $how }.

# L’équipe
team-title = Équipe
team-heading = { $count ->
        [one] { $count } agent
       *[other] { $count } agents
    }
team-none = Aucun agent n’a encore d’enfants dans vos zones.
team-line = { $children ->
        [one] { $children } enfant
       *[other] { $children } enfants
    }, { $open ->
        [one] { $open } suivi ouvert
       *[other] { $open } suivis ouverts
    }, { $late } en retard
team-away = Absence jusqu’au { $date }, { $name } remplace
team-unattended-left = { $count ->
        [one] Un enfant est
       *[other] { $count } enfants sont
    } avec { $name }, dont le dernier jour était le { $date }. Personne ne remplace.
team-unattended-off = { $count ->
        [one] Un enfant est
       *[other] { $count } enfants sont
    } avec { $name }, qui ne peut pas se connecter. Personne ne remplace.
team-unattended-away = { $count ->
        [one] Un enfant est
       *[other] { $count } enfants sont
    } avec { $name }, qui n’est pas là jusqu’au { $date }. Qui devait remplacer n’est pas là non plus.
team-unattended-do = Les confier à un collègue
team-inactive = Ne peut pas se connecter
team-call-of = Appeler { $name }
team-late = Voir ce qui est en retard
team-code = Faire un code à usage unique
team-code-of = Faire un code à usage unique pour { $name }
team-code-hint = Pour un mot de passe oublié ou un nouveau téléphone : remettez le code de vive voix. Il s’affiche une fois et vaut 72 heures.
team-villages = Villages : { $list }

# La liste pour la réunion de la semaine
meeting-title = Pour la réunion
meeting-link = Cette liste pour la réunion, à imprimer ou en fichier
meeting-heading = { $count ->
        [one] Un suivi en retard pour la réunion
       *[other] { $count } suivis en retard pour la réunion
    }
meeting-urgent = { $count ->
        [one] Une référence urgente sans réponse vient en premier.
       *[other] { $count } références urgentes sans réponse viennent en premier, sous chaque agent.
    }
meeting-unanswered = Pas encore de réponse
meeting-inside = Avec les noms : pour l’équipe seulement. Reprenez ou détruisez le papier après la réunion.
meeting-how = Imprimez-la avec votre navigateur.
meeting-file = La même en fichier CSV, avec des codes au lieu des noms
meeting-more = Il y en a plus que la place : restreignez d’abord la liste.
meeting-agreed = Ce que nous convenons
