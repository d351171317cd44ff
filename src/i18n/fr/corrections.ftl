# Corrections du dossier : annuler une visite, la rattacher à un autre enfant, réunir deux dossiers d’un enfant.

# Chemins depuis la page qui corrige une visite
correction-move-way = Ce n’est pas cet enfant ? Rattacher la visite au bon enfant
correction-void-way = Elle n’a pas eu lieu, ou a été saisie deux fois ? L’annuler

# Pourquoi une visite est annulée
void-reason-wrong-child = Saisie pour un autre enfant
void-reason-never-happened = Elle n’a pas eu lieu
void-reason-entered-twice = La même visite a été saisie deux fois
void-reason-other = Autre chose

# Annuler
void-title = Annuler la visite du { $date } : { $name }
void-lede = Elle reste au dossier avec votre raison et ne compte plus. Les règles sont relues à partir de ce jour.
void-what = { $where }, saisie par { $by }
void-reason = Quel genre de raison
void-note = La raison, pour qui la lira ensuite
void-note-hint = Au moins 10 caractères.
void-whose = Si vous savez de quel enfant il s’agit, rattachez-lui plutôt la visite : rien de mesuré ne se perd.
void-move = La rattacher à un autre enfant
void-do = L’annuler
void-done = La visite est annulée. Ce qu’elle seule avait causé est clos.

# Ce qu’une correction changerait
effect-title = Ce qui change pour { $name }
effect-none = Aucun suivi ne change.
effect-closes = Se ferme :
effect-opens = S’ouvre :
effect-changes = Reste ouvert, avec une autre urgence ou une autre date :
effect-urgent = Un suivi urgent se fermerait. Si l’enfant est peut-être malade, voyez-le ou appelez avant de continuer.

# Quand quelqu’un a été plus rapide
correction-changed = Quelqu’un a modifié cette visite entre-temps. Regardez ce qui est écrit maintenant, puis envoyez à nouveau.
correction-gone-title = Cette visite n’est plus ici
correction-gone = Quelqu’un l’a annulée ou rattachée à un autre enfant entre-temps. Vous n’avez rien changé.
correction-to-child = À la page de l’enfant

# Historique sur la page de l’enfant
history-title = Corrections de ce dossier
history-void = La visite du { $date } a été annulée : { $reason }.
history-when = { $name }, { $date }.
history-moved-to = La visite du { $date } a été rattachée à
history-moved-to-other = La visite du { $date } a été rattachée à un enfant que vous ne suivez pas.
history-moved-from = La visite du { $date } a été rattachée ici ; elle venait de
history-moved-from-other = La visite du { $date } a été rattachée ici ; elle venait d’un enfant que vous ne suivez pas.
history-merged = Le dossier { $code } de { $name } a été réuni à celui-ci. Son code mène ici.

# Choisir l’autre enfant
pick-label = Nom ou code de l’enfant
pick-none = Personne d’autre. Essayez une autre orthographe, ou le code.
pick-more = Il y en a d’autres. Écrivez une plus grande partie du nom.

# Rattacher une visite
move-visit-title = Rattacher la visite du { $date } : { $name }
move-visit-lede = La visite va à l’enfant dont il s’agissait vraiment, avec tout ce qui a été mesuré et demandé. Les règles sont relues pour les deux enfants.
move-visit-whose = De quel enfant s’agissait-il ?
move-visit-to = À qui
move-visit-another = Choisir un autre enfant
move-visit-sure = L’avez-vous regardé ?
move-visit-sure-yes = Oui, c’était une visite à { $name }
move-visit-do = La rattacher à { $name }
move-visit-done = La visite est maintenant ici. Les règles ont été relues pour les deux enfants.
move-visit-cannot = Ce ne peut pas être une visite à cet enfant
doubt-other-sex = { $sex ->
        [F] La visite a été notée pour un garçon, et { $name } est une fille.
       *[M] La visite a été notée pour une fille, et { $name } est un garçon.
    }
doubt-left = { $name } a quitté le programme le { $date }, avant cette visite.
doubt-same-day = { $name } a déjà une visite ce jour-là. Les deux sont gardées, et l’application pose la question.
doubt-unusual = { $what } : différent de ce qu’on sait de { $name }.
obstacle-before-birth = { $name } est né(e) le { $date }, après cette visite. Regardez les deux dates.
obstacle-after-death = { $name } est décédé(e) le { $date }, avant cette visite. Regardez les deux dates.
fault-after-death = Cette visite est après le décès de l’enfant. Regardez les deux dates.
fault-look-first = Regardez ce qui est écrit ici, puis cochez.

# Réunir deux dossiers d’un enfant
merge-way = Deux dossiers pour un enfant ? Les réunir
merge-title = Réunir { $name } et un autre dossier
merge-lede = Pour un enfant inscrit deux fois. Visites, suivis, issues et aliments se retrouvent dans un seul dossier. On ne peut pas revenir en arrière.
merge-which = Quel dossier est celui du même enfant ?
merge-compare = Les deux dossiers
merge-fact = Donnée
merge-column = Dossier { $code }
merge-bold = Ce qui diffère est en gras. Des jumeaux ont la même date de naissance et la même mère : ils restent deux.
merge-differs = (diffère)
merge-name = Nom
merge-known-as = Appelé
merge-caregiver = Personne qui s’en occupe
merge-phone = Téléphone
merge-village = Village
merge-worker = Agent
merge-registered = Inscription
merge-visited = Visites
merge-visits = { $count ->
        [one] { $count }, le { $from }
       *[other] { $count }, du { $from } au { $to }
    }
merge-last-weight = Dernier poids
merge-open = Suivis ouverts
merge-weeks = { $weeks } semaines et { $days } jours
merge-right-born = Date de naissance
merge-right-sex = Fille ou garçon
merge-right-birth-weight = Poids de naissance
merge-right-gestation = Durée de la grossesse
merge-right-status = Dans le programme
merge-ask-born = Quelle date de naissance est juste ?
merge-ask-sex = Fille ou garçon : qu’est-ce qui est juste ?
merge-ask-birth-weight = Quel poids de naissance est juste ?
merge-ask-gestation = Quelle durée de grossesse est juste ?
merge-ask-status = Qu’est-ce qui est vrai maintenant ?
merge-same-days = Les deux ont une visite le { $days }. Les deux visites sont gardées, et l’application pose la question.
merge-open-then = Ce qui est ouvert ensuite
merge-open-depends = Ce qui est ouvert ensuite dépend de vos réponses. Les règles sont relues depuis la première visite.
merge-survivor = Quel dossier continue ?
merge-survivor-hint = Son nom, son entourage, son village et son agent restent. Le code de l’autre y mène.
merge-record = { $code }, { $name }
merge-sure = Est-ce un seul enfant ?
merge-sure-yes = Oui : j’ai demandé à la famille ou à l’agent
merge-do = Réunir les deux dossiers
merge-done = Les deux dossiers n’en font qu’un. Le code de l’autre mène ici.
merge-led-here = { $code } a été réuni à ce dossier.
merge-changed = Quelqu’un a modifié un de ces dossiers entre-temps. Regardez ce qui est écrit maintenant, puis envoyez à nouveau.
merge-already-title = C’est déjà un seul dossier
merge-already = Quelqu’un les a réunis entre-temps. Vous n’avez rien changé.
merge-contradicts = En l’état, ce ne peut pas être un seul enfant
merge-visit-before-birth = Il y a une visite le { $date }, avant cette date de naissance. Choisissez l’autre date, ou rattachez cette visite au bon enfant.
merge-registered-before-birth = Un dossier a été inscrit le { $date }, avant cette date de naissance. Choisissez l’autre date.
merge-one-died = Un dossier dit que l’enfant est décédé, l’autre non. Notez d’abord le décès dans l’autre, ou gardez deux enfants.
merge-died-on-other-days = Les deux dossiers donnent des jours de décès différents. Voyez-le avec la famille.
merge-visit-after-death = Il y a une visite le { $date }, après le jour du décès. Rattachez ou annulez d’abord cette visite, si elle n’était pas pour cet enfant.

# Dossiers qui sont peut-être le même
twin-note = Peut-être le même enfant qu’un autre dossier :
twin-compare = Comparer les deux
twin-tell = Si c’est le même enfant, dites-le à votre superviseur, qui peut réunir les deux dossiers.
